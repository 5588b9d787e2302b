import { changeById, changesNext, type StoredDrop } from '../../../db/stores/change-store.ts';
import { materialsInOrder } from '../../../db/stores/material-store.ts';
import { promisedDays } from '../../../db/stores/order-store.ts';
import { unitsOfYard } from '../../../db/stores/units-store.ts';
import { type BuyAhead, buysAhead } from '../buying/trips-ahead.ts';
import { today, type UseCaseContext } from '../core/context.ts';
import { currentPlan } from '../plan/make-plan.ts';
import { effectOf, type PromiseMove } from '../plan/promises-moved.ts';
import { reasonShown } from '../plan/reason-shown.ts';
import { BETTER_PLAN } from '../plan/record-remake.ts';
import type { CurrentPlan } from '../plan/remake-plan.ts';

export interface ShownChange {
  change: number;
  words: string;
  /** What it did to the days of other orders, with the date the customer was told. */
  moved: (PromiseMove & { promisedOn: string | null })[];
  /** What was fixed and could not stay. */
  dropped: StoredDrop[];
  /** After a change of an order: what the plan counts on being ordered today or before. */
  buyToday: BuyAhead[];
  undone: boolean;
  /** A better plan is being looked for: what it moved may not be the last word. */
  improving: boolean;
}

/** Dates are given by these: whoever gives one has to know what it hangs on today. */
const OF_ORDERS = /^(order|date) /;

/** What has to be ordered today, or should have been, for the plan to hold; in the units that are shown. */
const boughtToday = async (context: UseCaseContext, current: CurrentPlan): Promise<BuyAhead[]> => {
  const day = today(current.yard.yard.timeZone, context.now);
  const system = await context.database.read(unitsOfYard);
  return (await buysAhead(context, current, system)).filter(({ orderBy }) => orderBy <= day);
};

/** What one change did, to be said right after it; null when there is no such change. */
export const showChange = async (context: UseCaseContext, id: number): Promise<ShownChange | null> => {
  const { database, background } = context;
  const change = await database.read((tx) => changeById(tx, id));
  if (!change) return null;
  const current = OF_ORDERS.test(change.kind) && change.undoneBy === null ? await currentPlan(context) : null;
  const buyToday = current ? await boughtToday(context, current) : [];
  return database.read(async (tx) => {
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
      buyToday,
      undone: change.undoneBy !== null,
      improving: background?.improving() ?? false,
    };
  });
};
