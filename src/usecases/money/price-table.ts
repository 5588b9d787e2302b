import { POINTS } from '../../engine/csv/dialect.ts';
import { type Cell, writeCsv } from '../../engine/csv/write-csv.ts';
import type { UseCaseContext } from '../core/context.ts';
import { fileName, type KeptFile } from '../files/export-file.ts';
import { currentPlan } from '../plan/make-plan.ts';
import { COST_GROUPS } from './cost-facts.ts';
import { type PricedThing, showPrices } from './show-prices.ts';

const COLUMNS = [
  'what',
  'name',
  'currency',
  ...COST_GROUPS,
  'cost',
  'not all counted',
  'price',
  'by',
  'margin percent',
];

const percentCell = (margin: number | null): Cell => (margin === null ? null : Number((margin * 100).toFixed(1)));

const cellsOf = (what: string, thing: PricedThing, currency: string): Cell[] => [
  ...[what, thing.name, currency],
  ...COST_GROUPS.map((group) => thing.cost.groups[group]),
  ...[thing.cost.total, thing.isMore ? 'yes' : null, thing.price],
  ...[thing.price === null ? null : thing.isTyped ? 'typed' : 'margin', percentCell(thing.margin)],
];

/** The price list as a CSV, a row a kit or piece. */
export const priceTable = async (context: UseCaseContext): Promise<KeptFile> => {
  const { kits, pieces, currency } = await showPrices(context);
  const { yard } = await currentPlan(context);
  const rows = [
    ...kits.map((kit) => cellsOf('kit', kit, currency)),
    ...pieces.map((piece) => cellsOf('piece', piece, currency)),
  ];
  return { name: fileName(yard.yard, context.now, 'prices.csv'), text: writeCsv(COLUMNS, rows, POINTS) };
};
