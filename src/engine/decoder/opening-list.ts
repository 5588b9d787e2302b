import type { Problem } from './problem.ts';

/** Moulds that could take a pour in this shift: one entry for each mould and casting, with the minute it could be ready. */
export interface Openings {
  count: number;
  mould: Int32Array;
  casting: Int32Array;
  /** Earliest minute at which the mould could be set up, people allowing. */
  readyAt: Int32Array;
  /** Minutes of stripping and setting up that it takes before that. */
  work: Int32Array;
  /** By casting: earliest of its entries, NEVER without one. */
  soonest: Int32Array;
}

/** Room for all openings that a problem can have at once, none listed yet. Made once and used again in every shift. */
export const openingsOf = (problem: Problem): Openings => {
  const most = problem.moulds.reduce((n, m) => n + m.makes.length, 0);
  const ints = (n: number) => new Int32Array(n);
  const castings = problem.castings.length;
  return {
    count: 0,
    mould: ints(most),
    casting: ints(most),
    readyAt: ints(most),
    work: ints(most),
    soonest: ints(castings),
  };
};
