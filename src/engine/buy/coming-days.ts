import type { Material } from '../../../shared/material.ts';
import { type DayNumber, minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { calendarOf } from '../calendar/calendar.ts';
import { keepsDays } from './dated-lots.ts';
import { daysOfSupplier } from './supplier-days.ts';

/** The days on which a material can come that is ordered from today on (R10). */
export interface ComingDays {
  soonest: DayNumber;
  /**
   * The last day, no sooner than the soonest, on which it can come so that it counts by a day, where so many days are wanted in hand:
   * there are fewer where what could come before it would be past its date by then.
   */
  countingBy: (day: DayNumber, daysInHand: number) => DayNumber;
  /** The last day on which it can be ordered to come on a day on which it can. */
  orderedFor: (comesOn: DayNumber) => DayNumber;
  /** Days after which what came last is past its date before anything more can come; `until` null: nothing more comes. */
  apart: readonly { after: DayNumber; until: DayNumber | null }[];
}

/** It can be ordered every day, and comes `leadDays` later; `keeps` so many days after that (null: for ever). */
export const comingEveryDay = (today: DayNumber, leadDays: number, keeps: number | null): ComingDays => ({
  soonest: today + leadDays,
  countingBy: (day, daysInHand) => Math.max(today + leadDays, day - Math.min(daysInHand, (keeps ?? Infinity) - 1)),
  orderedFor: (comesOn) => comesOn - leadDays,
  apart: [],
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

const comingOn = (orders: ReadonlyMap<DayNumber, DayNumber>, keeps: number, end: DayNumber): ComingDays | null => {
  const days = [...orders.keys()];
  const [soonest] = days;
  if (soonest === undefined) return null;
  const inHandOn = (i: number, daysInHand: number) =>
    i === 0 ? 0 : Math.max(0, Math.min(daysInHand, days[i - 1]! + keeps - days[i]!));
  const countingBy = (day: DayNumber, daysInHand: number) =>
    days[days.findLastIndex((one, i) => one + inHandOn(i, daysInHand) <= day)] ?? soonest;
  const apart = days.flatMap((day, i) => {
    const [after, until] = [day + keeps, days[i + 1] ?? null];
    return after < (until === null ? end : until) ? [{ after, until }] : [];
  });
  return { soonest, countingBy, orderedFor: (comesOn) => orders.get(comesOn)!, apart };
};

/**
 * The days on which a material can come within the plan, by the days of its supplier (R10); null where it cannot be bought.
 *
 * Example: a shop that is open on weekdays, two days to come, today Thursday 8 April: the soonest day is Monday the 12th, to be
 * ordered by Friday the 9th.
 */
export const comingDaysOf = (yard: YardFile, material: Material): ComingDays | null => {
  const { leadDays } = material;
  if (leadDays === undefined) return null;
  const { timeZone, now, horizonDays } = yard.yard;
  const today = calendarOf(timeZone).dayOf(minuteOf(now));
  const last = today + horizonDays;
  const orders = ordersByComing(yard, material, leadDays, [today, last]);
  const keeps = keepsDays(material);
  return orders === null ? comingEveryDay(today, leadDays, keeps) : comingOn(orders, keeps ?? Infinity, last);
};
