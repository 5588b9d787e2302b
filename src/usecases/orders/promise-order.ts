import { updateOrder } from '../../../db/stores/order-store.ts';
import { done, type Outcome, refuse, today, type UseCaseContext } from '../core/context.ts';
import { type Changed, changing } from '../plan/changing.ts';
import { openOrder, orderName } from './open-order.ts';
import { promiseFaults } from './order-draft.ts';

/** A date is promised for good: a hold on the order ends with it. */
export const promiseOrder = (
  context: UseCaseContext,
  id: string,
  promisedOn: string | null,
): Promise<Outcome<Changed<{ name: string }>>> =>
  changing(context, { kind: 'date promised', words: ({ name }) => `Date promised to ${name}` }, async (tx, yard) => {
    const found = await openOrder(tx, id);
    if (!found.ok) return found;
    if (!promisedOn) return refuse('promisedOn', 'Give the date that is promised.');
    const faults = promiseFaults({ promisedOn, heldUntil: null }, today(yard.yard.timeZone, context.now), found.value);
    if (faults.length > 0) return { ok: false, faults };
    await updateOrder(tx, id, { promisedOn, heldUntil: null });
    return done({ name: orderName(found.value) });
  });
