import { changeById, type StoredChange } from '../../db/stores/change-store.ts';
import { openOrders } from '../../db/stores/order-store.ts';
import type { UseCaseContext } from './context.ts';
import { type PromiseMove, promisesMoved } from './promises-moved.ts';

export interface ShownChange {
  change: number;
  words: string;
  /** What it did to the days of other orders, with the date the customer was told. */
  moved: (PromiseMove & { promisedOn: string | null })[];
  undone: boolean;
}

const shownChange = (change: StoredChange, promised: ReadonlyMap<string, string | null>): ShownChange => ({
  change: change.id,
  words: change.words,
  moved: promisesMoved(change.before, change.after).map((move) => ({
    ...move,
    promisedOn: promised.get(move.order) ?? null,
  })),
  undone: change.undoneBy !== null,
});

/** What one change did, to be said right after it; null when there is no such change. */
export const showChange = ({ database }: UseCaseContext, id: number): Promise<ShownChange | null> =>
  database.read(async (tx) => {
    const change = await changeById(tx, id);
    if (!change) return null;
    const promised = new Map((await openOrders(tx)).map((order) => [order.id, order.promisedOn]));
    return shownChange(change, promised);
  });
