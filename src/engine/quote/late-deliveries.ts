import type { Order } from '../../../shared/order.ts';
import { dateOfDay, dayNumber, minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { calendarOf } from '../calendar/calendar.ts';
import { compile } from '../decoder/compile.ts';
import { NEVER } from '../decoder/problem.ts';
import type { PlanMemory } from '../search/memory.ts';
import { completesUnder, type Earliest } from './completes-under.ts';
import { earliestBeside } from './earliest.ts';
import { askingIn, presentIn, withoutDeal } from './present.ts';

/**
 * The yard if all that is ordered from now on, and all that is on its way and does not come today, came as many days late as
 * are kept in hand for deliveries. What is there the same day is fetched, and is not late.
 *
 * Example: 5 days to come and 7 in hand: 12 days to come; what is expected on 9 April comes on the 16th.
 */
const withLateDeliveries = (yard: YardFile): YardFile => {
  const { deliveryDaysInHand: inHand } = yard.yard;
  const today = calendarOf(yard.yard.timeZone).dayOf(minuteOf(yard.yard.now));
  return {
    ...yard,
    materials: yard.materials.map((one) => (one.leadDays ? { ...one, leadDays: one.leadDays + inHand } : one)),
    incoming: yard.incoming.map((one) =>
      dayNumber(one.on) <= today ? one : { ...one, on: dateOfDay(dayNumber(one.on) + inHand) },
    ),
  };
};

/** What is known of an order without late deliveries. */
interface Known {
  /** The plan in which it is ready soonest. */
  earliest: Earliest;
  /** The minute by which it is ready soon enough: it is not asked whether it could be sooner. */
  soonEnough: number;
}

/**
 * The minute at which an order could be complete if deliveries came late (`withLateDeliveries`), by the plan that has it
 * soonest without, or else by others, no date given being later than it is then anyway. NEVER where none has it then.
 */
export const completesIfLate = (
  yard: YardFile,
  order: Order,
  { earliest, soonEnough }: Known,
  memory?: PlanMemory,
): number => {
  const late = compile(withLateDeliveries(yard));
  const [asking, present] = [askingIn(late, order), presentIn(late, memory)];
  // Who has what of all that is kept says nothing where less is kept.
  const same = earliest.dispatch ? completesUnder(asking, withoutDeal(earliest.dispatch), present, 'given') : NEVER;
  if (same <= soonEnough) return same;
  return Math.min(same, earliestBeside(asking, present, { anew: false }).completesAt);
};
