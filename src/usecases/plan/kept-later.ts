import type { PlanFile } from '../../../shared/plan.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { dropsOf, type FixedPlan } from './fixed-plan.ts';

/** A plan made anew, and what was fixed before. */
interface Made {
  plan: PlanFile;
  fixed: FixedPlan;
}

/** The plan of before, and whose dates were given. */
interface Beside {
  near: PlanFile;
  yard: YardFile;
  given: readonly string[];
}

/** An order that falls out of a plan counts like a year. */
const A_YEAR = 365;
const EPSILON = 1e-9;

/** Weighted days by which dates that were given are later than in the plan of before. */
const harmOf = (plan: PlanFile, { near, yard, given }: Beside): number => {
  const late = ({ orders }: PlanFile) => new Map(orders.map(({ id, daysLate }) => [id, daysLate]));
  const [was, is] = [late(near), late(plan)];
  return yard.orders
    .filter(({ id }) => given.includes(id))
    .reduce((sum, { id, weight }) => sum + weight * Math.max(0, (is.get(id) ?? A_YEAR) - (was.get(id) ?? 0)), 0);
};

/** What a plan is judged by, first number first; less is better. */
const figuresOf = ({ plan, fixed }: Made, beside: Beside): number[] => [
  harmOf(plan, beside),
  plan.score.unplannedWeight,
  plan.score.weightedDaysLate,
  plan.score.weightedDaysAfterWanted,
  plan.score.weightedCompletionDays,
  dropsOf(fixed, plan).length,
];

/**
 * Whether a plan does as little harm to dates as another: those that were given first, then what is left out, then days late
 * and the day of each order; and where all of that is equal, it keeps as much of what was fixed.
 */
export const isNoWorse = (one: Made, other: Made, beside: Beside): boolean => {
  const [is, was] = [figuresOf(one, beside), figuresOf(other, beside)];
  const first = is.findIndex((figure, i) => Math.abs(figure - was[i]!) > EPSILON);
  return first < 0 || is[first]! < was[first]!;
};
