import { updateOrder } from '../../../db/stores/order-store.ts';
import { dateOfDay, dayNumber } from '../../../shared/time.ts';
import { todayIn } from '../../engine/book/today-in.ts';
import { done, refuse } from '../core/context.ts';
import type { DaysGiven } from '../typed/order-form.ts';
import { openOrder, orderName } from './open-order.ts';
import { dayFaults, meanwhile } from './order-draft.ts';
import { passedDays } from './passed-days.ts';
import type { OrderEdit } from './save-order.ts';

/** How long a date is held when nobody says otherwise. */
const HOLD_DAYS = 5;

/** The last day of a hold that begins on a date. `holdUntil('2027-04-05')` is '2027-04-10'. */
export const holdUntil = (from: string): string => dateOfDay(dayNumber(from) + HOLD_DAYS);

/** Keeps a date for a customer until the end of a day. The order keeps its place in the plan meanwhile. */
export const holdOrder = (id: string, days: DaysGiven): OrderEdit<{ name: string }> => ({
  what: { kind: 'date held', words: ({ name }) => `Date held for ${name}` },
  work: async (tx, yard) => {
    const found = await openOrder(tx, id);
    if (!found.ok) return found;
    const { promisedOn, heldUntil } = days;
    if (!heldUntil) return refuse('heldUntil', 'Say until which day it is held.');
    const faults = [...meanwhile(days, found.value, yard), ...dayFaults(days, yard, found.value)];
    if (faults.length > 0) return { ok: false, faults };
    await updateOrder(tx, id, { promisedOn, heldUntil });
    const passed = passedDays(days, todayIn(yard), { promisedOn: found.value.promisedOn });
    return done({ id, name: orderName(found.value), passed });
  },
});
