import { updateOrder } from '../../../db/stores/order-store.ts';
import { todayIn } from '../../engine/book/today-in.ts';
import { done, refuse } from '../core/context.ts';
import type { DaysGiven } from '../typed/order-form.ts';
import { openOrder, orderName } from './open-order.ts';
import { dayFaults, meanwhile } from './order-draft.ts';
import { passedDays } from './passed-days.ts';
import type { OrderEdit } from './save-order.ts';

/** A date is promised for good: a hold on the order ends with it. */
export const promiseOrder = (id: string, days: Omit<DaysGiven, 'heldUntil'>): OrderEdit<{ name: string }> => ({
  what: { kind: 'date promised', words: ({ name }) => `Date promised to ${name}` },
  work: async (tx, yard) => {
    const found = await openOrder(tx, id);
    if (!found.ok) return found;
    const { promisedOn } = days;
    if (!promisedOn) return refuse('promisedOn', 'Give the date that is promised.');
    const faults = [
      ...meanwhile(days, found.value, yard),
      ...dayFaults({ promisedOn, heldUntil: null }, yard, found.value),
    ];
    if (faults.length > 0) return { ok: false, faults };
    await updateOrder(tx, id, { promisedOn, heldUntil: null });
    const passed = passedDays(days, todayIn(yard), { promisedOn: found.value.promisedOn });
    return done({ id, name: orderName(found.value), passed });
  },
});
