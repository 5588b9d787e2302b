import { bagsOf, type Placing } from '../place/placing.ts';
import { NEVER, NONE } from '../place/problem.ts';

/** How good a plan is, first number first; less is better (contract, "What makes one plan better than another"). */
export interface Evaluation {
  unplannedWeight: number;
  weightedDaysLate: number;
  /** `batchWorthDays` x batches + `bagWorthDays` x bags + weighted completion days. */
  cost: number;
}

const EPSILON = 1e-9;

export const isBetter = (a: Evaluation, b: Evaluation): boolean => {
  if (Math.abs(a.unplannedWeight - b.unplannedWeight) > EPSILON) return a.unplannedWeight < b.unplannedWeight;
  if (Math.abs(a.weightedDaysLate - b.weightedDaysLate) > EPSILON) return a.weightedDaysLate < b.weightedDaysLate;
  return a.cost < b.cost - EPSILON;
};

/** Evaluates the plan that a decode left in `at`. */
export const evaluate = (at: Placing): Evaluation => {
  const { problem, orders, placed } = at;
  let [unplannedWeight, weightedDaysLate] = [0, 0];
  let cost = problem.batchWorthDays * placed.batches + problem.bagWorthDays * bagsOf(placed);
  for (let o = 0; o < problem.orders.length; o++) {
    const { weight, dueDay } = problem.orders[o]!;
    const completesAt = orders.completesAt[o]!;
    if (completesAt === NONE) {
      unplannedWeight += weight;
      continue;
    }
    const on = problem.handover[problem.calendar.dayOf(completesAt) - problem.today]!;
    if (dueDay < NEVER && on > dueDay) weightedDaysLate += weight * (on - dueDay);
    cost += weight * (on - problem.today);
  }
  return { unplannedWeight, weightedDaysLate, cost };
};
