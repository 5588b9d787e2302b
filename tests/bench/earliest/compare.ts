import type { Order } from '../../../shared/order.ts';
import type { PlanFile } from '../../../shared/plan.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { planWithMemory } from '../../../src/engine/plan.ts';
import { quoteOrder } from '../../../src/engine/quote/quote.ts';
import { refereePlan } from '../../../src/engine/referee.ts';
import { keepOfPlan } from '../../../src/engine/standing/keep-of-plan.ts';
import { audit } from '../../contract/audit-plan.mjs';
import { type ExactDates, exactDates } from './exact-dates.ts';
import type { Standing } from './exact-promise.ts';
import { minuteOf } from './tiny.ts';

/** What is compared; the first three are dates. */
export const FIGURES = ['earliestOn', 'promiseOn', 'ifFirstOn', 'weightedDaysLate'] as const;
export type Figure = (typeof FIGURES)[number];

/** A figure that the planner has otherwise than the enumerator. */
interface Mismatch {
  figure: Figure;
  planner: string;
  exact: string;
  /** The planner is better than what is possible: one of the two is wrong. */
  isImpossible: boolean;
}

export interface Compared {
  mismatches: Mismatch[];
  /** The planner says that its earliest day is proven. */
  isProven: boolean;
  /** What audit and referee say of the plans that prove the enumerator's figures. */
  faults: string[];
  plans: Pick<ExactDates, 'earliestPlan' | 'firstPlan' | 'latePlan'>;
}

const faultsOf = (yard: YardFile, plan: PlanFile | null): string[] =>
  plan ? [...audit(yard, plan).faults, ...refereePlan(yard, plan).map((fault) => JSON.stringify(fault))] : [];

const text = (value: string | number | null): string => (value === null ? 'never' : String(value));

/** No date is later than any. */
const isBefore = (a: string | number | null, b: string | number | null): boolean =>
  typeof a === 'number' ? a < Number(b) : (a ?? '9999') < (b ?? '9999');

/** How each order of the yard stands in a plan that has all of them. */
export const standingIn = (yard: YardFile, plan: PlanFile): Standing[] =>
  yard.orders.map(({ id }) => {
    const { daysLate, completesAt } = plan.orders.find((one) => one.id === id)!;
    return { daysLate, completesAt: minuteOf(completesAt) };
  });

/**
 * Plans a tiny yard, asks beside that plan when the order could be ready, and compares with the enumerator. Null where the
 * plan leaves an order out: nothing is then said of days late.
 */
export const compareDates = (yard: YardFile, order: Order): Compared | null => {
  const { plan, memory } = planWithMemory(yard);
  if (plan.unplanned.length > 0) return null;
  const quote = quoteOrder(yard, order, { memory, standing: keepOfPlan(plan) });
  const exact = exactDates(yard, order, standingIn(yard, plan));
  const planner = { ...quote, weightedDaysLate: plan.score.weightedDaysLate };
  const asked = { ...order, due: undefined };
  return {
    isProven: quote.proven,
    mismatches: FIGURES.filter((figure) => planner[figure] !== exact[figure]).map((figure) => ({
      figure,
      planner: text(planner[figure]),
      exact: text(exact[figure]),
      isImpossible: isBefore(planner[figure], exact[figure]),
    })),
    faults: [
      ...faultsOf({ ...yard, orders: [...yard.orders, asked] }, exact.earliestPlan),
      ...faultsOf({ ...yard, orders: [asked] }, exact.firstPlan),
      ...faultsOf(yard, exact.latePlan),
    ],
    plans: exact,
  };
};
