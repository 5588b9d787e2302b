import type { Material } from '../../../shared/material.ts';
import { type DayNumber, minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { calendarOf } from '../calendar/calendar.ts';
import { daysInHandOf, keepsDays } from './dated-lots.ts';
import { daysOfSupplier } from './supplier-days.ts';

/** The days on which a material can come that is ordered from today on (R10). */
export interface ComingDays {
  soonest: DayNumber;
  /** The last day up to one, no sooner than the soonest, on which it can come. */
  upTo: (day: DayNumber) => DayNumber;
  /** The last day on which it can be ordered to come on a day on which it can. */
  orderedFor: (comesOn: DayNumber) => DayNumber;
}

/** It can be ordered every day, and comes `leadDays` later. */
export const comingEveryDay = (today: DayNumber, leadDays: number): ComingDays => ({
  soonest: today + leadDays,
  upTo: (day) => Math.max(today + leadDays, day),
  orderedFor: (comesOn) => comesOn - leadDays,
});

/** The days on which it can come up to a last one, each with the last day to order it on. */
const ordersByComing = (
  { suppliers = [] }: YardFile,
  { supplier }: Material,
  leadDays: number,
  [today, last]: readonly [DayNumber, DayNumber],
): Map<DayNumber, DayNumber> | null => {
  const listed = suppliers.find(({ name }) => name === supplier);
  if (!listed) return null;
  const { opens = null, delivers = null, closed, fetched = false } = listed;
  const days = daysOfSupplier({ opens, delivers, closed }, fetched, today, last);
  const orders = new Map<DayNumber, DayNumber>();
  for (let day = days.open.from(today); day !== null; day = days.open.from(day + 1)) {
    const comesOn = days.comes.from(day + leadDays);
    if (comesOn !== null) orders.set(comesOn, day);
  }
  return orders;
};

const comingOn = (orders: ReadonlyMap<DayNumber, DayNumber>): ComingDays | null => {
  const days = [...orders.keys()];
  const [soonest] = days;
  if (soonest === undefined) return null;
  const upTo = (day: DayNumber) => days[days.findLastIndex((one) => one <= day)] ?? soonest;
  return { soonest, upTo, orderedFor: (comesOn) => orders.get(comesOn)! };
};

/** From one day to the next, and from the last one to the end, there are no more than so many. */
const areNeverApart = (days: readonly DayNumber[], end: DayNumber, most: number): boolean =>
  days.every((day, i) => (days[i + 1] ?? end) - day <= most);

/**
 * The days on which a material can come within the plan, by the days of its supplier (R10); null where it cannot be bought. What keeps for
 * less long than its supplier is away goes by no such days.
 *
 * Example: a shop that is open on weekdays, two days to come, today Thursday 8 April: the soonest day is Monday the 12th, to be
 * ordered by Friday the 9th.
 */
export const comingDaysOf = (yard: YardFile, material: Material): ComingDays | null => {
  const { leadDays } = material;
  if (leadDays === undefined) return null;
  const { timeZone, now, horizonDays, deliveryDaysInHand } = yard.yard;
  const today = calendarOf(timeZone).dayOf(minuteOf(now));
  const last = today + horizonDays;
  const orders = ordersByComing(yard, material, leadDays, [today, last]);
  if (orders === null) return comingEveryDay(today, leadDays);
  const keeps = keepsDays(material);
  const inHand = leadDays > 0 ? daysInHandOf(deliveryDaysInHand, material) : 0;
  if (keeps === null || orders.size === 0 || areNeverApart([...orders.keys()], last, keeps - inHand))
    return comingOn(orders);
  return comingEveryDay(today, leadDays);
};
