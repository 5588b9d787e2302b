import type { Order } from '../../../shared/order.ts';
import type { PlanFile } from '../../../shared/plan.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { asPlan } from './as-plan.ts';
import { type Best, bestOf, type Worth } from './enumerate.ts';
import { dateOf, dayOf, daysLate, handoverOn, NEVER, type Tiny, tinyOf } from './tiny.ts';

/** What the enumerator says of a yard and an order asked about, each with the plan that proves it possible. */
export interface ExactDates {
  earliestOn: string | null;
  promiseOn: string | null;
  ifFirstOn: string | null;
  weightedDaysLate: number;
  earliestPlan: PlanFile | null;
  firstPlan: PlanFile | null;
  latePlan: PlanFile | null;
}

const lateness =
  (tiny: Tiny): Worth =>
  (completesAt) =>
    completesAt.reduce((n, at, o) => n + tiny.orders[o]!.weight * daysLate(tiny, tiny.orders[o]!, at), 0);

/** The minute of the last order, where none of the others has more days late than it may. */
const lastOne =
  (tiny: Tiny, mostLate: readonly number[]): Worth =>
  (completesAt) => {
    const isKept = mostLate.every((days, o) => daysLate(tiny, tiny.orders[o]!, completesAt[o]!) <= days);
    return isKept ? completesAt.at(-1)! : Infinity;
  };

/** The day to promise: so many more sessions that allow batches have passed since a minute. */
const promised = (tiny: Tiny, earliestAt: number): number | null => {
  const { sessionsInHand, horizonDays } = tiny.yard.yard;
  if (sessionsInHand === 0) return handoverOn(tiny, earliestAt);
  const after = tiny.sessions.filter(({ from, allows }) => from >= earliestAt && allows.includes('batch'));
  const last = after[sessionsInHand - 1];
  return last && dayOf(last.end) <= tiny.today + horizonDays ? handoverOn(tiny, last.end) : null;
};

const withOrders = (yard: YardFile, orders: Order[]): Tiny =>
  tinyOf({ ...yard, orders: orders.map(({ wanted: _wanted, ...order }) => order) });

const planOrNull = (tiny: Tiny, best: Best): PlanFile | null => (best.state ? asPlan(tiny, best) : null);

/**
 * By enumeration: the earliest day for an order with no other order later than in a plan (`mostLate`, days by order), the day
 * to promise, the day when it goes before all others, and the fewest weighted days late of the yard without it. Throws
 * `TooLarge` where the yard is not tiny.
 */
export const exactDates = (yard: YardFile, asked: Order, mostLate: readonly number[]): ExactDates => {
  const now = withOrders(yard, yard.orders);
  const least = bestOf(now, lateness(now));
  const both = withOrders(yard, [...yard.orders, { ...asked, due: undefined }]);
  const earliest = bestOf(both, lastOne(both, mostLate));
  const first = withOrders(yard, [{ ...asked, due: undefined }]);
  const ifFirst = bestOf(first, lastOne(first, []));
  const promise = earliest.worth < NEVER ? promised(both, earliest.worth) : null;
  const dayText = (minute: number) => (minute < NEVER ? dateOf(handoverOn(both, minute)) : null);
  return {
    earliestOn: dayText(earliest.worth),
    promiseOn: promise === null ? null : dateOf(promise),
    ifFirstOn: dayText(ifFirst.worth),
    weightedDaysLate: least.worth,
    earliestPlan: planOrNull(both, earliest),
    firstPlan: planOrNull(first, ifFirst),
    latePlan: planOrNull(now, least),
  };
};
