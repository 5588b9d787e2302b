import type { Tx } from '../../../db/open.ts';
import { addNotice } from '../../../db/stores/change-store.ts';
import { freeSetAside, lapsedHolds, type StoredOrder, updateOrder } from '../../../db/stores/order-store.ts';
import type { Moment } from '../core/compute-for-request.ts';
import { done, today } from '../core/context.ts';
import { recordChange } from './record-change.ts';
import type { CurrentPlan } from './remake-plan.ts';

const whoseOf = ({ id, customer }: StoredOrder): string => customer?.name ?? `order ${id}`;

/** Orders held until a day that has passed give up their place in the plan, each with a notice. */
export const lapseHolds = async (tx: Tx, moment: Moment, current: CurrentPlan): Promise<CurrentPlan> => {
  const { now } = moment;
  let before = current;
  for (const order of await lapsedHolds(tx, today(current.yard.yard.timeZone, now))) {
    const whose = whoseOf(order);
    const words = `Hold for ${whose} ran out`;
    const notice = `The date held for ${whose} has run out, and its place in the plan is free again.`;
    const outcome = await recordChange(tx, moment, before, { kind: 'hold lapsed', words }, async (change) => {
      await updateOrder(tx, order.id, { status: 'lapsed' });
      await freeSetAside(tx, order.id);
      await addNotice(tx, { at: now, words: notice, change });
      return done(null);
    });
    if (outcome.ok) before = { ...before, ...outcome.value, revision: before.revision + 1, now };
  }
  return before;
};
