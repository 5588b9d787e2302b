import type { Order } from '../../../shared/order.ts';
import type { PlanFile } from '../../../shared/plan.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { asPlan } from './as-plan.ts';
import { type Best, bestOf, type Worth } from './enumerate.ts';
import { exactPromise, type Standing } from './exact-promise.ts';
import { dateOf, daysLate, handoverOn, NEVER, type Tiny, tinyOf } from './tiny.ts';

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
  (tiny: Tiny, standing: readonly Standing[]): Worth =>
  (completesAt) => {
    const isKept = standing.every((stands, o) => daysLate(tiny, tiny.orders[o]!, completesAt[o]!) <= stands.daysLate);
    return isKept ? completesAt.at(-1)! : Infinity;
  };

const withOrders = (yard: YardFile, orders: Order[]): Tiny =>
  tinyOf({ ...yard, orders: orders.map(({ wanted: _wanted, ...order }) => order) });

const planOrNull = (tiny: Tiny, best: Best): PlanFile | null => (best.state ? asPlan(tiny, best) : null);

/**
 * By enumeration: the earliest day for an order with no other order later than in the plan that stands, the day
 * to promise, the day when it goes before all others, and the fewest weighted days late of the yard without it. Throws
 * `TooLarge` where the yard is not tiny.
 */
export const exactDates = (yard: YardFile, asked: Order, standing: readonly Standing[]): ExactDates => {
  const now = withOrders(yard, yard.orders);
  const least = bestOf(now, lateness(now));
  const both = withOrders(yard, [...yard.orders, { ...asked, due: undefined }]);
  const earliest = bestOf(both, lastOne(both, standing));
  const first = withOrders(yard, [{ ...asked, due: undefined }]);
  const ifFirst = bestOf(first, lastOne(first, []));
  const promise = earliest.worth < NEVER ? exactPromise(both, asked, standing) : NEVER;
  const dayText = (minute: number) => (minute < NEVER ? dateOf(handoverOn(both, minute)) : null);
  return {
    earliestOn: dayText(earliest.worth),
    promiseOn: promise < NEVER ? dateOf(promise) : null,
    ifFirstOn: dayText(ifFirst.worth),
    weightedDaysLate: least.worth,
    earliestPlan: planOrNull(both, earliest),
    firstPlan: planOrNull(first, ifFirst),
    latePlan: planOrNull(now, least),
  };
};
