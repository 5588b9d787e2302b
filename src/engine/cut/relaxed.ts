import { type Fill, fillStick } from './fill.ts';

/** The best cutting where a stick may count in fractions: what it takes, and how many whole ones that proves needed. */
export interface Relaxed {
  patterns: { counts: number[]; times: number }[];
  /** No packing does with fewer sticks; 0 where the effort did not suffice to prove anything. */
  bound: number;
}

const TOLERANCE = 1e-9;
const GAIN = 1e-7;
const STEPS_PER_FILLING = 20_000;

/** The basis of a simplex: one way to cut a stick per kind of cut, how often each is used, and the inverse, by row. */
interface Basis {
  patterns: number[][];
  times: number[];
  inverse: Float64Array[];
}

/** Every kind by itself, as many at once as fit and are wanted. */
const startOf = (wanted: number[], alone: number[]): Basis => {
  const most = alone.map((n, i) => Math.min(wanted[i]!, n));
  return {
    patterns: most.map((n, i) => most.map((_, k) => (k === i ? n : 0))),
    times: most.map((n, i) => wanted[i]! / n),
    inverse: most.map((n, i) => Float64Array.from(most, (_, k) => (k === i ? 1 / n : 0))),
  };
};

const entering = (basis: Basis, counts: number[]): number[] =>
  basis.inverse.map((row) => counts.reduce((sum, n, i) => (n === 0 ? sum : sum + row[i]! * n), 0));

/** The row that runs out first when a new pattern comes in; the lowest of equals. */
const leaving = (basis: Basis, column: number[]): number => {
  let [row, least] = [-1, Number.POSITIVE_INFINITY];
  column.forEach((x, i) => {
    const ratio = basis.times[i]! / x;
    if (x > GAIN && ratio < least - TOLERANCE) [row, least] = [i, ratio];
  });
  return row;
};

const exchange = (basis: Basis, row: number, counts: number[], column: number[]): void => {
  const pivot = basis.inverse[row]!;
  const by = column[row]!;
  for (let i = 0; i < pivot.length; i++) pivot[i] = pivot[i]! / by;
  const times = basis.times[row]! / by;
  basis.inverse.forEach((line, k) => {
    const x = column[k]!;
    if (k === row || x === 0) return;
    for (let i = 0; i < line.length; i++) line[i] = line[i]! - x * pivot[i]!;
    basis.times[k] = Math.max(0, basis.times[k]! - x * times);
  });
  basis.patterns[row] = counts;
  basis.times[row] = times;
};

/**
 * The linear relaxation of cutting `wanted` of each kind from sticks or sheets, with the best way to fill one found anew for
 * each step. `alone` is how many of a kind go on one by themselves; every kind fits and is wanted at least once. Source:
 * Gilmore and Gomory, A linear programming approach to the cutting-stock problem (1961), from memory; here a
 * pattern has no more of a kind than is wanted, which bounds a little better.
 *
 * Example: five wanted and one goes on a stick: the bound is 5.
 */
export const relaxedCutting = (wanted: number[], alone: number[], fill: Fill): Relaxed => {
  const basis = startOf(wanted, alone);
  const mostRounds = 200 + 20 * wanted.length;
  let bound = 0;
  for (let round = 0; round < mostRounds; round++) {
    const worth = wanted.map((_, i) => basis.inverse.reduce((sum, row) => sum + row[i]!, 0));
    const filling = fill(worth, wanted);
    const sticks = basis.times.reduce((sum, n) => sum + n, 0);
    // No stick holds more worth than this, so all that is wanted takes at least so many (Farley's bound).
    bound = Math.max(bound, Math.ceil(sticks / Math.max(1, filling.most) - 1e-6));
    if (filling.worth <= 1 + GAIN || bound >= Math.ceil(sticks - 1e-6)) break;
    const column = entering(basis, filling.counts);
    const row = leaving(basis, column);
    if (row < 0) break;
    exchange(basis, row, filling.counts, column);
  }
  return { patterns: basis.patterns.map((counts, i) => ({ counts, times: basis.times[i]! })), bound };
};

/**
 * The linear relaxation of cutting sticks. `room` and `capacity` in mm, both with the kerf added.
 *
 * Example: one a stick, `relaxedSticks([1600], [5], 3000).bound` is 5; one of each a stick, `relaxedSticks([2, 3], [3,
 * 3], 5).bound` is 3.
 */
export const relaxedSticks = (room: number[], wanted: number[], capacity: number): Relaxed =>
  relaxedCutting(
    wanted,
    room.map((x) => Math.floor((capacity + TOLERANCE) / x)),
    (worth, left) => fillStick({ room, worth, wanted: left }, capacity, STEPS_PER_FILLING),
  );
