import { NEVER, NONE, type Problem } from '../decoder/problem.ts';
import { type InYard, inYard } from './in-yard.ts';
import { canSearchAll, isAnythingFixed } from './scope.ts';
import { searchAll, type Worth } from './search.ts';

const EPSILON = 1e-9;

/** Weighted days late of these orders, by when they are complete; Infinity where one of them is not. */
const daysLate = ({ orders, calendar, handover, today }: Problem, made: readonly number[]): Worth => {
  const days = new Map<number, number>();
  const dayOf = (minute: number): number => {
    const known = days.get(minute) ?? handover[calendar.dayOf(minute) - today]!;
    days.set(minute, known);
    return known;
  };
  return (completesAt) =>
    made.reduce((sum, o) => {
      const { dueDay, weight } = orders[o]!;
      if (completesAt[o] === NONE) return Number.POSITIVE_INFINITY;
      return dueDay >= NEVER ? sum : sum + weight * Math.max(0, dayOf(completesAt[o]!) - dueDay);
    }, 0);
};

/** A plan with fewer weighted days late, null where none was found; and a number of them that no plan at all is under, if that is known. */
export interface FewestLate {
  found: InYard | null;
  bound: number | null;
}

/**
 * Looks through all ways to make all orders of a small yard for one with fewer weighted days late than `than`, for so many
 * steps. Nothing is found, and no bound known, where the yard is too large for that.
 */
export const fewestLate = (problem: Problem, than: number, mostSteps: number): FewestLate => {
  const made = problem.orders.map((_, o) => o);
  if (!canSearchAll(problem, made)) return { found: null, bound: null };
  const worth = daysLate(problem, made);
  const { best, isProven } = searchAll(problem, made, worth, than - EPSILON, mostSteps);
  const found = best && !isAnythingFixed(problem) ? inYard(problem, best, worth) : null;
  return { found, bound: isProven ? (best?.worth ?? than) : null };
};
