import { updateOrder } from '../../../db/stores/order-store.ts';
import { dateOfDay, dayNumber } from '../../../shared/time.ts';
import { done, type Outcome, refuse, today, type UseCaseContext } from '../core/context.ts';
import { type Changed, changing } from '../plan/changing.ts';
import { openOrder, orderName } from './open-order.ts';
import { promiseFaults } from './order-draft.ts';

/** How long a date is held when nobody says otherwise. */
const HOLD_DAYS = 5;

/** The last day of a hold that begins on a date. `holdUntil('2027-04-05')` is '2027-04-10'. */
export const holdUntil = (from: string): string => dateOfDay(dayNumber(from) + HOLD_DAYS);

/** Keeps a date for a customer until the end of a day. The order keeps its place in the plan meanwhile. */
export const holdOrder = (
  context: UseCaseContext,
  id: string,
  hold: { promisedOn: string | null; heldUntil: string | null },
): Promise<Outcome<Changed<{ name: string }>>> =>
  changing(context, { kind: 'date held', words: ({ name }) => `Date held for ${name}` }, async (tx, yard) => {
    const found = await openOrder(tx, id);
    if (!found.ok) return found;
    if (!hold.heldUntil) return refuse('heldUntil', 'Say until which day it is held.');
    const faults = promiseFaults(hold, today(yard.yard.timeZone, context.now), found.value);
    if (faults.length > 0) return { ok: false, faults };
    await updateOrder(tx, id, hold);
    return done({ name: orderName(found.value) });
  });
