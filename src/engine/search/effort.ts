import type { Problem } from '../decoder/problem.ts';

/** How long planning goes on: "quick" tries a few dispatches, the others search on for a counted number of plans. */
export type Effort = 'quick' | 'normal' | 'thorough';

/** How long a search goes on, counted, never timed: the same input gives the same plan on any machine. */
export interface StopRule {
  /** Plans decoded whole or in part. */
  plans: number;
  /** Plans decoded, mostly in small part, to polish the best one found. */
  polishing: number;
  /** Sequences judged by the surrogate. */
  judged: number;
}

/**
 * Pieces the orders ask for, those that stand finished too, and 1 at the least: what the time of a decode grows with.
 *
 * Example: 8, 24, 4, 16 and 9 of them: `poursOf(compile(yard))` is 61.
 */
export const poursOf = (problem: Problem): number =>
  Math.max(
    1,
    problem.orders.reduce((n, o) => n + o.pieces.reduce((k, p) => k + p.count, 0), 0),
  );

const POURS_PLACED = { normal: 300_000, thorough: 2_000_000 };
const MOST_PLANS = { normal: 40_000, thorough: 300_000 };
const POLISHING_SHARE = 0.25;
const LINES_JUDGED = { normal: 80_000_000, thorough: 800_000_000 };
/** Few orders have few sequences: so many judgements for every two of them are enough. */
const JUDGED_A_PAIR = { normal: 1_000, thorough: 10_000 };

/**
 * The stop rule of an effort: pours placed in all, divided by the pours of the yard; so many plans at most, 12 at the
 * least.
 *
 * Example: one order of one piece has as many plans as there are at most: `stopRule({ orders: [{ pieces: [{ count: 1
 * }] }] }, 'normal').plans` is 40000.
 */
export const stopRule = (problem: Problem, effort: 'normal' | 'thorough'): StopRule => {
  const lines = Math.max(
    1,
    problem.orders.reduce((n, o) => n + 1 + o.pieces.length, 0),
  );
  const plans = Math.max(12, Math.min(MOST_PLANS[effort], Math.floor(POURS_PLACED[effort] / poursOf(problem))));
  return {
    plans,
    polishing: Math.ceil(plans * POLISHING_SHARE),
    judged: Math.min(Math.floor(LINES_JUDGED[effort] / lines), JUDGED_A_PAIR[effort] * problem.orders.length ** 2),
  };
};
