import { fillStick } from './fill.ts';

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

/** Every kind by itself, as many on a stick as fit and are wanted. */
const startOf = (room: number[], wanted: number[], capacity: number): Basis => {
  const most = room.map((x, i) => Math.min(wanted[i]!, Math.floor((capacity + TOLERANCE) / x)));
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
 * The linear relaxation of cutting `wanted` of each kind, with the best pattern found anew for each step. `room` and
 * `capacity` in mm, both with the kerf added; every kind fits a stick and is wanted at least once. Source: Gilmore and
 * Gomory, A linear programming approach to the cutting-stock problem (1961), from memory; here a pattern has no more
 * of a kind than is wanted, which bounds a little better.
 *
 * Example: one a stick, `relaxedSticks([1600], [5], 3000).bound` is 5; one of each a stick, `relaxedSticks([2, 3], [3,
 * 3], 5).bound` is 3.
 */
export const relaxedSticks = (room: number[], wanted: number[], capacity: number): Relaxed => {
  const basis = startOf(room, wanted, capacity);
  const mostRounds = 200 + 20 * room.length;
  let bound = 0;
  for (let round = 0; round < mostRounds; round++) {
    const worth = room.map((_, i) => basis.inverse.reduce((sum, row) => sum + row[i]!, 0));
    const filling = fillStick({ room, worth, wanted }, capacity, STEPS_PER_FILLING);
    const sticks = basis.times.reduce((sum, n) => sum + n, 0);
    // No stick holds more worth than this filling, so all that is wanted takes at least so many (Farley's bound).
    if (filling.proven) bound = Math.max(bound, Math.ceil(sticks / Math.max(1, filling.worth) - 1e-6));
    if (filling.worth <= 1 + GAIN || bound >= Math.ceil(sticks - 1e-6)) break;
    const column = entering(basis, filling.counts);
    const row = leaving(basis, column);
    if (row < 0) break;
    exchange(basis, row, filling.counts, column);
  }
  return { patterns: basis.patterns.map((counts, i) => ({ counts, times: basis.times[i]! })), bound };
};
