import { ordersOfIds, type StoredOrder } from '../../../db/stores/order-store.ts';
import { workRecords } from '../../../db/stores/work-record-store.ts';
import { type BatchKey, type BatchRecord, batchKey } from '../../../shared/batch-record.ts';
import { minuteOf } from '../../../shared/time.ts';
import type { WorkRecord } from '../../../shared/work-record.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import type { UseCaseContext } from '../core/context.ts';
import { currentPlan } from '../plan/make-plan.ts';
import { pieceLedger, type TracedPiece } from './piece-ledger.ts';
import { piecesNow } from './pieces-now.ts';

/** Bags of one date, by the name of what is in them. */
export interface BagDateFacts {
  name: string;
  on: string;
  /** Read off the bag at the mixer. */
  typed: boolean;
  /** By the stock book, which has the date on the bag; with neither it is the day it came. */
  dated: boolean;
}

/** A piece as the page has it: things by their names, instants in the yard's zone. */
export interface TracedPieceFacts
  extends Pick<TracedPiece, 'mould' | 'filledAt' | 'cameOut' | 'reason' | 'is' | 'order'> {
  piece: string;
  batch: BatchKey | null;
  bagDates: readonly BagDateFacts[];
  strippedAt: string | null;
  customer: string | null;
}

/** All that was recorded, with what stands in the yard by now. */
export interface Seen {
  yard: YardFile;
  /** Every piece there ever was, as far as it was recorded. */
  ledger: readonly TracedPiece[];
  records: readonly WorkRecord[];
  orders: ReadonlyMap<string, StoredOrder>;
}

/** What a material is called; its id where it is there no more. */
export const materialName = ({ materials }: YardFile, id: string): string =>
  materials.find((one) => one.id === id)?.name ?? id;

/** Everything that is known of pieces, with the orders that they are of. */
export const seePieces = async (context: UseCaseContext): Promise<Seen> => {
  const { plan, yard } = await currentPlan(context);
  return context.database.read(async (tx) => {
    const records = await workRecords(tx);
    const ledger = pieceLedger(records, await piecesNow(tx, yard, plan));
    const packed = records.flatMap((record) => (record.kind === 'packed' ? [record.order] : []));
    const named = new Set([...ledger.flatMap(({ order }) => order ?? []), ...packed]);
    const orders = new Map((await ordersOfIds(tx, [...named])).map((order) => [order.id, order]));
    return { yard, records, ledger, orders };
  });
};

/** Whose an order is; null where that is not recorded, or there is none. */
export const nameOf = (seen: Seen, order: string | null): string | null =>
  order === null ? null : (seen.orders.get(order)?.customer?.name ?? null);

/** Which bags a batch is of, in words. */
export const bagDateFacts = (yard: YardFile, { bagDates = [] }: BatchRecord): BagDateFacts[] =>
  bagDates.map(({ material, on, typed = false, dated = false }) => ({
    ...{ name: materialName(yard, material), on, typed, dated },
  }));

/** A piece in the words of a page. */
export const pieceFacts = (seen: Seen, piece: TracedPiece): TracedPieceFacts => {
  const { mould, filledAt, cameOut, reason, is, order, batch, strippedAt, casting } = piece;
  const { instantText } = calendarOf(seen.yard.yard.timeZone);
  const shown = (instant: string) => instantText(minuteOf(instant));
  return {
    ...{ mould, cameOut, reason, is, order, filledAt: shown(filledAt) },
    piece: seen.yard.castings.find(({ id }) => id === casting)?.name ?? casting,
    batch: batch && batchKey(batch),
    bagDates: batch ? bagDateFacts(seen.yard, batch) : [],
    strippedAt: strippedAt && shown(strippedAt),
    customer: nameOf(seen, order),
  };
};
