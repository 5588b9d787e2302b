import { materialById } from '../../../db/stores/material-store.ts';
import { stockLinesOf } from '../../../db/stores/stock-lines.ts';
import { POINTS } from '../../engine/csv/dialect.ts';
import { type Cell, writeCsv } from '../../engine/csv/write-csv.ts';
import { shownUnit } from '../../engine/units/material-unit.ts';
import type { UseCaseContext } from '../core/context.ts';
import { fileName, type KeptFile } from '../files/export-file.ts';
import { currentPlan } from '../plan/make-plan.ts';
import { showMeasures } from '../typed/measures.ts';
import { type LineFor, lineFacts, type StockLineFacts } from './show-stock-book.ts';

const COLUMNS = [
  ...['when', 'what', 'amount', 'unit', 'offcut length', 'left', 'bag date', 'opened', 'beyond the book'],
  ...['batch', 'order', 'reason', 'who', 'line', 'undone', 'of line'],
] as const;

/** More lines than these are not read at once. */
const MOST = 50_000;

const minuteCell = (instant: string | null): Cell => instant?.slice(0, 16).replace('T', ' ') ?? null;

const figure = (quantity: number): number => Number(quantity.toFixed(6));

const batchCell = (work: LineFor | null): Cell => (work && 'mix' in work ? `${work.mix}, ${work.mould}` : null);

const cellsOf = (line: StockLineFacts, unit: string): Cell[] => [
  ...[minuteCell(line.at), line.kind, figure(line.quantity), line.length === null ? unit : 'offcut', line.length],
  ...[figure(line.left), line.useBy, minuteCell(line.openedAt), line.beyond > 0 ? figure(line.beyond) : null],
  ...[batchCell(line.for), line.for && 'order' in line.for ? line.for.order : null, line.reason, line.by],
  ...[line.line, line.standing === 'stands' ? null : line.standing, line.ofLine],
];

/** The stock book of a material as a CSV, a row a line, the newest first; null where there is no such material. */
export const stockBookTable = async (context: UseCaseContext, id: string): Promise<KeptFile | null> => {
  const { yard } = await currentPlan(context);
  const { system } = await showMeasures(context);
  const { material, lines } = await context.database.read(async (tx) => ({
    material: await materialById(tx, id),
    lines: await stockLinesOf(tx, id, MOST, undefined),
  }));
  if (!material) return null;
  const { word } = shownUnit(material.unit, system);
  const rows = lines.map(lineFacts(material, yard, system)).map((line) => cellsOf(line, word));
  return { name: fileName(yard.yard, context.now, 'stock-book.csv'), text: writeCsv(COLUMNS, rows, POINTS) };
};
