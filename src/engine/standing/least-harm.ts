import type { PlanFile } from '../../../shared/plan.ts';
import { lateBound } from '../bound/bound.ts';
import { soonestComplete } from '../bound/soonest.ts';
import { refusals } from '../decoder/admit.ts';
import { NEVER, type Problem } from '../decoder/problem.ts';
import { handoverOn } from '../quote/promise.ts';
import { A_YEAR } from './standing-plan.ts';

/** The last day on which an order does no harm: its date, or as late as the plan that stands had it. */
const harmlessUntil = (problem: Problem, near: Pick<PlanFile, 'orders'>): number[] => {
  const before = new Map(near.orders.map(({ id, daysLate }) => [id, daysLate]));
  return problem.orders.map(({ dueDay }, o) =>
    dueDay >= NEVER ? NEVER : dueDay + (before.get(problem.yard.orders[o]!.id) ?? 0),
  );
};

/** Days of harm that no plan spares an order, whatever else is made or left. */
const leastOf = (problem: Problem, order: number, until: number): number => {
  if (refusals(problem, [order]).has(order)) return A_YEAR;
  const soonest = soonestComplete(problem, order);
  if (soonest >= problem.horizonEnd) return A_YEAR;
  return Math.min(A_YEAR, Math.max(0, handoverOn(problem, soonest) - until));
};

/**
 * A lower bound on what any plan does to dates that were given (`harmOf`): each order by itself as soon as it may be, and all
 * of them by what moulds, hours and goods allow. `aim` is what some plan does.
 */
export const leastHarm = (
  problem: Problem,
  near: Pick<PlanFile, 'orders'>,
  given: ReadonlySet<string>,
  aim: number,
): number => {
  const until = harmlessUntil(problem, near);
  const orders = problem.orders.flatMap(({ dueDay }, o) =>
    given.has(problem.yard.orders[o]!.id) && dueDay < NEVER ? [o] : [],
  );
  const weights = orders.map((o) => problem.orders[o]!.weight);
  const alone = orders.reduce((sum, o, i) => sum + weights[i]! * leastOf(problem, o, until[o]!), 0);
  const onesOut = A_YEAR * Math.min(...weights);
  // Goods that cannot be had for all of them leave one out, whichever.
  const least = refusals(problem, orders).size > 0 ? Math.max(alone, onesOut) : alone;
  if (least >= aim) return least;
  const measured = { ...problem, orders: problem.orders.map((one, o) => ({ ...one, dueDay: until[o]! })) };
  // A plan that leaves one of them out may have the others sooner.
  return Math.max(least, Math.min(lateBound(measured, orders, aim), onesOut));
};
