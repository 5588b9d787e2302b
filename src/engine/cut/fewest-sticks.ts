import { dive } from './dive.ts';
import { relaxedSticks } from './relaxed.ts';
import { repack } from './repack.ts';
import { type Packing, packInRounds } from './rounds.ts';

const TOLERANCE = 1e-9;
/** Effort is counted in steps of search, never in time. */
const ROUND_STEPS = 200_000;
const REPACK_STEPS = 1_000_000;
const MOST_ROUNDS = 60;
const DIVE_NODES = 60;

/** Sticks that the rooms fill however they are cut: `ceil(sum n (l + k) / (L + k))`. */
const byRoom = (room: number[], wanted: number[], capacity: number): number =>
  Math.ceil(room.reduce((sum, x, i) => sum + x * wanted[i]!, 0) / capacity - TOLERANCE);

/**
 * A number of sticks that no packing can do with less than: long cuts of which no two share a stick count one each,
 * and what of the middling ones does not fit beside them counts by room. The best over all limits between long and
 * short; of a single kind, as many as a stick holds. `room` and `capacity` in mm, both with the kerf added. Source:
 * Martello and Toth, Knapsack Problems (1990), bound L2, from memory.
 *
 * Example: by their room alone five of 1600 in 3000 would need 3, but `fewestPossible([1600], [5], 3000)` is 5.
 */
export const fewestPossible = (room: number[], wanted: number[], capacity: number): number => {
  if (room.length === 1) return Math.ceil(wanted[0]! / Math.floor((capacity + TOLERANCE) / room[0]!));
  let bound = byRoom(room, wanted, capacity);
  for (const limit of [0, ...room.filter((x) => x <= capacity / 2)]) {
    let [alone, halves, beside, middling] = [0, 0, 0, 0];
    room.forEach((x, i) => {
      const n = wanted[i]!;
      if (x > capacity - limit + TOLERANCE) alone += n;
      else if (x > capacity / 2 + TOLERANCE) {
        halves += n;
        beside += n * (capacity - x);
      } else if (x >= limit) middling += n * x;
    });
    bound = Math.max(bound, alone + halves + Math.max(0, Math.ceil((middling - beside) / capacity - TOLERANCE)));
  }
  return bound;
};

/** Whole parts of the relaxed cutting, and the few cuts left over packed in rounds. */
const rounded = (room: number[], wanted: number[], capacity: number): { packing: Packing; bound: number } => {
  const relaxed = relaxedSticks(room, wanted, capacity);
  const patterns = relaxed.patterns
    .map((x) => ({ counts: x.counts, times: Math.floor(x.times + 1e-6) }))
    .filter((x) => x.times > 0);
  const left = wanted.map((n, i) => n - patterns.reduce((sum, x) => sum + x.times * x.counts[i]!, 0));
  const whole = patterns.reduce((sum, x) => sum + x.times, 0);
  const rest = packInRounds(
    { room, worth: room, wanted: left },
    capacity,
    relaxed.bound - whole,
    MOST_ROUNDS,
    ROUND_STEPS,
  );
  return {
    packing: { patterns: [...patterns, ...rest.patterns], sticks: whole + rest.sticks, steps: rest.steps },
    bound: relaxed.bound,
  };
};

/** Each step relaxes what is left anew, until the aim is proven missed or met. */
const dived = (room: number[], wanted: number[], capacity: number, aim: number): Packing | null =>
  dive(
    wanted,
    aim,
    (kinds, left) =>
      relaxedSticks(
        kinds.map((kind) => room[kind]!),
        left,
        capacity,
      ),
    DIVE_NODES,
  );

/**
 * Cuts so many of each kind from as few sticks as it can: the relaxed cutting rounded down and the rest packed; where
 * that is more than is proven to be needed, packed in rounds as a whole; then parts of the best packing again; then step by
 * step by the relaxed cutting. Stops as soon as a packing is proven to be the best. `room` and `capacity` in mm, both with
 * the kerf added; every kind fits a stick.
 *
 * Example: cuts of 1150 and 550 and a kerf of 3, ten and twenty wanted: `fewestSticks([1153, 553], [10, 20],
 * 6003).sticks` is 4.
 */
export const fewestSticks = (room: number[], wanted: number[], capacity: number): Packing => {
  const kinds = { room, worth: room, wanted };
  const { packing, bound } = rounded(room, wanted, capacity);
  const aim = Math.max(bound, fewestPossible(room, wanted, capacity));
  if (packing.sticks <= aim) return packing;
  const whole = packInRounds(kinds, capacity, aim, MOST_ROUNDS, ROUND_STEPS);
  const best = whole.sticks < packing.sticks ? whole : packing;
  const again = best.sticks > aim ? repack(kinds, capacity, best, aim, REPACK_STEPS) : best;
  return again.sticks > aim ? (dived(room, wanted, capacity, again.sticks - 1) ?? again) : again;
};
