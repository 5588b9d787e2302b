import { changeById, changesNext, type StoredDrop } from '../../../db/stores/change-store.ts';
import { materialsInOrder } from '../../../db/stores/material-store.ts';
import { promisedDays } from '../../../db/stores/order-store.ts';
import { unitsOfYard } from '../../../db/stores/units-store.ts';
import type { UseCaseContext } from '../core/context.ts';
import { effectOf, type PromiseMove } from '../plan/promises-moved.ts';
import { reasonShown } from '../plan/reason-shown.ts';
import { BETTER_PLAN } from '../plan/record-remake.ts';

export interface ShownChange {
  change: number;
  words: string;
  /** What it did to the days of other orders, with the date the customer was told. */
  moved: (PromiseMove & { promisedOn: string | null })[];
  /** What was fixed and could not stay. */
  dropped: StoredDrop[];
  undone: boolean;
  /** A better plan is being looked for: what it moved may not be the last word. */
  improving: boolean;
}

/** What one change did, to be said right after it; null when there is no such change. */
export const showChange = ({ database, background }: UseCaseContext, id: number): Promise<ShownChange | null> =>
  database.read(async (tx) => {
    const change = await changeById(tx, id);
    if (!change) return null;
    const [materials, system] = [await materialsInOrder(tx), await unitsOfYard(tx)];
    const promised = await promisedDays(tx);
    // Better plans that were found right after a change belong to what it did.
    const moved = effectOf([change, ...(await changesNext(tx, id, BETTER_PLAN))]);
    return {
      change: change.id,
      words: change.words,
      moved: moved.map((move) => ({
        ...move,
        reason: reasonShown(move.reason, materials, system),
        promisedOn: promised.get(move.order) ?? null,
      })),
      dropped: change.dropped ?? [],
      undone: change.undoneBy !== null,
      improving: background?.improving() ?? false,
    };
  });
