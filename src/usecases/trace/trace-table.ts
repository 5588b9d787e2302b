import { POINTS } from '../../engine/csv/dialect.ts';
import { type Cell, writeCsv } from '../../engine/csv/write-csv.ts';
import type { UseCaseContext } from '../core/context.ts';
import { fileName, type KeptFile } from '../files/export-file.ts';
import { currentPlan } from '../plan/make-plan.ts';
import type { TraceTyped } from '../typed/trace-form.ts';
import type { BagDateFacts, TracedPieceFacts } from './pieces-seen.ts';
import { showTrace, type TracedOrderFacts } from './show-trace.ts';

const COLUMNS = [
  ...['piece', 'mould', 'poured', 'bags', 'stripped', 'came out', 'reason', 'where it is'],
  ...['order', 'customer', 'phone', 'handed over'],
] as const;

/** "2027-04-03 Fast-setting mortar, 25 kg (read off the bag)" */
const bagCell = ({ name, on, typed, dated }: BagDateFacts): string => {
  if (typed) return `${on} ${name} (read off the bag)`;
  return `${on} ${name} (${dated ? 'date on the bag' : 'came that day'}, by the stock book)`;
};

const minuteCell = (instant: string | null): Cell => instant?.slice(0, 16).replace('T', ' ') ?? null;

const cellsOf = (piece: TracedPieceFacts, orders: readonly TracedOrderFacts[]): Cell[] => {
  const order = orders.find(({ id }) => id === piece.order);
  return [
    ...[piece.piece, piece.mould, minuteCell(piece.filledAt), piece.bagDates.map(bagCell).join('; ') || null],
    ...[minuteCell(piece.strippedAt), piece.cameOut, piece.reason, piece.is],
    ...[piece.order, order?.customer ?? null, order?.phone ?? null, order?.handedOverOn ?? null],
  ];
};

/** The list of pieces as a CSV, a row a piece, in the order in which they were poured. */
export const traceTable = async (context: UseCaseContext, typed: TraceTyped): Promise<KeptFile> => {
  const { found } = await showTrace(context, typed);
  const { yard } = await currentPlan(context);
  const rows = (found?.pieces ?? []).map((piece) => cellsOf(piece, found?.orders ?? []));
  return { name: fileName(yard.yard, context.now, 'pieces.csv'), text: writeCsv(COLUMNS, rows, POINTS) };
};
