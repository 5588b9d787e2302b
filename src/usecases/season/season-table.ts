import { POINTS } from '../../engine/csv/dialect.ts';
import { type Cell, writeCsv } from '../../engine/csv/write-csv.ts';
import type { UseCaseContext } from '../core/context.ts';
import { fileName, type KeptFile } from '../files/export-file.ts';
import { currentPlan } from '../plan/make-plan.ts';
import { type SeasonModel, showSeason } from './show-season.ts';

const COLUMNS = ['year', 'about', 'name', 'figure', 'value', 'unit'] as const;

const rounded = (value: number): number => Number(value.toFixed(6));

type Row = [about: string, name: string | null, figure: string, value: number, unit: string | null];

const piecesRows = (about: string, list: SeasonModel['moulds']): Row[] =>
  list.flatMap(({ name, out, good, mend, scrap }): Row[] => [
    [about, name, 'came out', out, null],
    [about, name, 'good', good, null],
    [about, name, 'to mend', mend, null],
    [about, name, 'scrap', scrap, null],
  ]);

const rowsOf = (model: SeasonModel): Row[] => [
  ...model.weeks.flatMap(({ week, pieces, before }): Row[] => [
    ['week', week, 'came out', pieces, null],
    ['week', week, 'came out 52 weeks before', before, null],
  ]),
  ...piecesRows('piece', model.castings),
  ...model.reasons.map(({ reason, count }): Row => ['scrap', reason, 'pieces', count, null]),
  ['batch', null, 'thrown away', model.thrownAway, null],
  ['orders', null, 'handed over', model.sold.orders, null],
  ...model.sold.lines.map(({ name, quantity, unit }): Row => ['sold', name, 'handed over', quantity, unit || null]),
  ['orders', null, 'asked for', model.sold.asked, model.sold.currency],
  ['promises', null, 'given', model.sold.promised, null],
  ['promises', null, 'kept', model.sold.kept, null],
  ['promises', null, 'given first, on record', model.sold.first.promised, null],
  ['promises', null, 'kept as given first', model.sold.first.kept, null],
  ...model.sold.daysLate.map((days): Row => ['promises', null, 'late', days, 'days']),
  ...model.times.flatMap(({ what, name, count, figure, minutes }): Row[] => [
    ['minutes', `${what}: ${name}`, 'by the figures', rounded(figure), 'minutes'],
    ['minutes', `${what}: ${name}`, 'measured', rounded(minutes.median), 'minutes'],
    ['minutes', `${what}: ${name}`, 'how many', count, null],
  ]),
  ...model.goods.flatMap(({ name, unit, pieces, recipe, taken, counted, spoiled }): Row[] => [
    ['material', name, 'pieces', pieces, null],
    ['material', name, 'a piece by the recipe', rounded(recipe), unit],
    ['material', name, 'a piece taken', rounded(taken), unit],
    ['material', name, 'a piece with counts', rounded(counted), unit],
    ['material', name, 'spoiled', rounded(spoiled), unit],
  ]),
  ...model.heldUp.flatMap(({ kind, changes, days }): Row[] => [
    ['held up', kind, 'times', changes, null],
    ['held up', kind, 'later in all', days, 'days'],
  ]),
  ...piecesRows('mould', model.moulds),
];

/** A year of the yard as a CSV, a row a figure. */
export const seasonTable = async (context: UseCaseContext, asked: number | null): Promise<KeptFile> => {
  const model = await showSeason(context, asked);
  const { yard } = await currentPlan(context);
  const rows = rowsOf(model).map((row): Cell[] => [model.year, ...row]);
  return { name: fileName(yard.yard, context.now, `season-${model.year}.csv`), text: writeCsv(COLUMNS, rows, POINTS) };
};
