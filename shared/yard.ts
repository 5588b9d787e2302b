import { z } from 'zod';
import { amount, atOnce, days, whole } from './number.ts';
import { promiseOdds } from './promise-odds.ts';
import { clock, instant, timeZone, weekday } from './time.ts';

/**
 * What holds for the yard as a whole: its clock, its room, its habits, and what a batch or a bag saved is worth, in
 * weighted days of finishing sooner. `now` is where the plan starts, which covers date(now) to date(now) +
 * `horizonDays`, both included. Goods that are ordered may come `deliveryDaysInHand` days late, and what is brought is there from `deliveredBy` of its day on (R10). Where there is a record, a date that is promised holds with `promiseOdds` (9 in 10 where nothing is said), else after `sessionsInHand`. Without `rackSpaces` there is no limit, without `handoverDays` every day is one.
 */
export const yard = z.strictObject({
  name: z.string(),
  timeZone,
  now: instant,
  horizonDays: z.int('has to be a whole number').min(1, 'has to be 1 to 7300').max(7300, 'has to be 1 to 7300'),
  mixers: atOnce.default(1),
  rackSpaces: whole.optional(),
  setUpMinutes: whole.default(0),
  clearUpMinutes: whole.default(0),
  handoverDays: z.array(weekday).optional(),
  sessionsInHand: whole.default(0),
  promiseOdds: promiseOdds.optional(),
  deliveryDaysInHand: days.default(0),
  deliveredBy: clock.default('00:00'),
  batchWorthDays: amount.default(5),
  bagWorthDays: amount.default(0.5),
});
