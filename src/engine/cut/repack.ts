import type { CutKinds } from './fill.ts';
import { type Packing, type Pattern, packInRounds, roomUsed } from './rounds.ts';

/** Sticks packed again at a time. */
const REPACKED = 30;
const ROUNDS = 3;
const STEPS_PER_TRY = 16_000;

/** Whole numbers below a limit that look random and are the same every time (Lehmer's generator, modulus 2^31 - 1). */
const drawing = (): ((below: number) => number) => {
  let state = 20_270_405;
  return (below) => {
    state = (state * 48_271) % 2_147_483_647;
    return state % below;
  };
};

const single = (patterns: Pattern[]): Pattern[] =>
  patterns.flatMap((x) => Array.from({ length: x.times }, () => ({ counts: x.counts, times: 1 })));

/** The sum of the squares of what is cut from each stick: more when what is left over is left on fewer sticks. */
const concentration = (kinds: CutKinds, patterns: Pattern[]): number =>
  patterns.reduce((sum, x) => sum + x.times * roomUsed(kinds.room, x.counts) ** 2, 0);

/** The stick with the most left over and others drawn by lot. */
const drawSome = (count: number, pick: (below: number) => number): Set<number> => {
  const chosen = new Set([0]);
  while (chosen.size < Math.min(count, REPACKED)) chosen.add(pick(count));
  return chosen;
};

/**
 * Packs a few of the sticks again, over and over, and keeps what saves a stick or leaves more over on fewer sticks, until
 * no more than `aim` are left or the counted effort is spent.
 *
 * Example: in a stick of 10, {6, 3}, {5, 4} and {2} become {6, 4} and {5, 3, 2}: one stick saved.
 */
export const repack = (kinds: CutKinds, capacity: number, from: Packing, aim: number, mostSteps: number): Packing => {
  const pick = drawing();
  let sticks = single(from.patterns);
  let steps = 0;
  while (sticks.length > aim && steps < mostSteps) {
    sticks.sort((a, b) => roomUsed(kinds.room, a.counts) - roomUsed(kinds.room, b.counts));
    const chosen = drawSome(sticks.length, pick);
    const some = sticks.filter((_, i) => chosen.has(i));
    const wanted = Array.from(kinds.wanted, (_, i) => some.reduce((sum, x) => sum + x.counts[i]!, 0));
    const again = packInRounds({ ...kinds, wanted }, capacity, some.length - 1, ROUNDS, STEPS_PER_TRY);
    steps += again.steps + sticks.length * kinds.room.length;
    if (again.sticks > some.length) continue;
    if (again.sticks === some.length && concentration(kinds, again.patterns) <= concentration(kinds, some)) continue;
    sticks = [...sticks.filter((_, i) => !chosen.has(i)), ...single(again.patterns)];
  }
  return { patterns: sticks, sticks: sticks.length, steps: from.steps + steps };
};
