import { type CutKinds, fillStick } from './fill.ts';

/** One way to cut a stick, used several times. */
export interface Pattern {
  /** How many of each kind of cut. */
  counts: number[];
  times: number;
}

export interface Packing {
  patterns: Pattern[];
  sticks: number;
}

const TOLERANCE = 1e-9;
/** Effort is counted in steps of search, never in time: about 20 ns each. */
const MOST_STEPS = 3_000_000;
const STEPS_PER_STICK = 4000;
const MOST_ROUNDS = 400;
/** Over 1: of two fillings as full, the one with the longer cuts is worth more, since long ones are harder to place. */
const LONG_FIRST = 1.04;
/** How slowly the worth of cuts moves, round by round. */
const INERTIA = [0.5, 0.75, 1, 1.25, 1.5, 1.75, 2];
const REPACKED = 60;

/** Sticks that the rooms fill however they are cut: `ceil(sum n (l + k) / (L + k))`. */
const byRoom = (room: ArrayLike<number>, wanted: ArrayLike<number>, capacity: number): number => {
  let sum = 0;
  for (let i = 0; i < room.length; i++) sum += room[i]! * wanted[i]!;
  return Math.ceil(sum / capacity - TOLERANCE);
};

/**
 * A number of sticks that no packing can do with less than: long cuts of which no two share a stick count one each, and
 * what of the middling ones does not fit beside them counts by room. The best over all limits between long and short.
 * Source: Martello and Toth, Knapsack Problems (1990), bound L2, from memory; kerf taken as part of each cut.
 *
 * Example: five of room 1600 in 3000 need 5; their room alone would say 3.
 */
export const fewestPossible = (room: ArrayLike<number>, wanted: ArrayLike<number>, capacity: number): number => {
  let bound = byRoom(room, wanted, capacity);
  const limits = [0, ...Array.from(room).filter((x) => x <= capacity / 2)];
  for (const limit of limits) {
    let [alone, halves, beside, middling] = [0, 0, 0, 0];
    for (let i = 0; i < room.length; i++) {
      const n = wanted[i]!;
      if (room[i]! > capacity - limit + TOLERANCE) alone += n;
      else if (room[i]! > capacity / 2 + TOLERANCE) {
        halves += n;
        beside += n * (capacity - room[i]!);
      } else if (room[i]! >= limit) middling += n * room[i]!;
    }
    bound = Math.max(bound, alone + halves + Math.max(0, Math.ceil((middling - beside) / capacity - TOLERANCE)));
  }
  return bound;
};

const timesOf = (counts: number[], left: number[]): number => {
  let times = Number.POSITIVE_INFINITY;
  for (let i = 0; i < counts.length; i++) if (counts[i]! > 0) times = Math.min(times, Math.floor(left[i]! / counts[i]!));
  return times;
};

/** Cuts that ended up on a stick with much waste become worth more, so that the next round cuts them sooner. */
const revalue = (kinds: CutKinds, worth: number[], pattern: Pattern, capacity: number, inertia: number): void => {
  let used = 0;
  for (let i = 0; i < pattern.counts.length; i++) used += pattern.counts[i]! * kinds.room[i]!;
  for (let i = 0; i < pattern.counts.length; i++) {
    const n = pattern.counts[i]! * pattern.times;
    if (n === 0) continue;
    const held = inertia * kinds.wanted[i]!;
    worth[i] = (held * worth[i]! + (n * kinds.room[i]! ** LONG_FIRST * capacity) / used) / (held + n);
  }
};

interface Round extends Packing {
  steps: number;
  /** What this round proves to be needed. */
  bound: number;
}

/** One packing, stick after stick, each filled with what is worth most. `worth` is changed for the next round. */
const pack = (kinds: CutKinds, worth: number[], capacity: number, inertia: number): Round => {
  const left = Array.from(kinds.wanted);
  const round: Round = { patterns: [], sticks: 0, steps: 0, bound: 0 };
  const values = worth.slice();
  const total = values.reduce((sum, value, i) => sum + value * left[i]!, 0);
  while (left.some((n) => n > 0)) {
    const filling = fillStick({ room: kinds.room, worth: values, wanted: left }, capacity, STEPS_PER_STICK);
    round.steps += filling.steps;
    // No stick can hold more worth than this one, so all of it takes at least so many.
    if (round.sticks === 0 && filling.proven) round.bound = Math.ceil(total / filling.worth - 1e-6);
    const pattern = { counts: filling.counts, times: timesOf(filling.counts, left) };
    for (let i = 0; i < left.length; i++) left[i] = left[i]! - pattern.counts[i]! * pattern.times;
    round.patterns.push(pattern);
    round.sticks += pattern.times;
    revalue(kinds, worth, pattern, capacity, inertia);
  }
  return round;
};

/** Rounds over the same cuts, until one reaches `aim` sticks, or fewer than that are proven impossible. */
const packBetter = (kinds: CutKinds, capacity: number, aim: number, rounds: number, steps: number): Round => {
  const worth = Array.from(kinds.room, (x) => x ** LONG_FIRST);
  let best = pack(kinds, worth, capacity, INERTIA[0]!);
  for (let i = 1; i < rounds && best.sticks > Math.max(aim, best.bound) && best.steps < steps; i++) {
    const round = pack(kinds, worth, capacity, INERTIA[i % INERTIA.length]!);
    const better = round.sticks < best.sticks ? round : best;
    best = { ...better, steps: best.steps + round.steps, bound: Math.max(best.bound, round.bound) };
  }
  return best;
};

const roomUsed = (kinds: CutKinds, pattern: Pattern): number =>
  pattern.counts.reduce((sum, n, i) => sum + n * kinds.room[i]!, 0);

/** The sum of the squares of what is cut from each stick: more when what is left over is left on fewer sticks. */
const concentration = (kinds: CutKinds, patterns: Pattern[]): number =>
  patterns.reduce((sum, x) => sum + x.times * roomUsed(kinds, x) ** 2, 0);

const single = (patterns: Pattern[]): Pattern[] =>
  patterns.flatMap((x) => Array.from({ length: x.times }, () => ({ counts: x.counts, times: 1 })));

/**
 * Packs a few of the sticks again, over and over, the one with the most left over always among them; keeps what saves a
 * stick or leaves more over on fewer sticks. `pick` gives whole numbers below a limit.
 */
const repack = (kinds: CutKinds, capacity: number, from: Packing, aim: number, pick: (below: number) => number): Packing => {
  let sticks = single(from.patterns);
  for (let steps = 0; sticks.length > aim && steps < MOST_STEPS; ) {
    sticks.sort((a, b) => roomUsed(kinds, a) - roomUsed(kinds, b));
    const chosen = new Set([0]);
    while (chosen.size < Math.min(sticks.length, REPACKED)) chosen.add(pick(sticks.length));
    const some = sticks.filter((_, i) => chosen.has(i));
    const wanted = Array.from(kinds.wanted, (_, i) => some.reduce((sum, x) => sum + x.counts[i]!, 0));
    const again = packBetter({ ...kinds, wanted }, capacity, some.length - 1, 3, STEPS_PER_STICK * 4);
    steps += again.steps + sticks.length;
    if (again.sticks > some.length) continue;
    if (again.sticks === some.length && concentration(kinds, again.patterns) <= concentration(kinds, some)) continue;
    sticks = [...sticks.filter((_, i) => !chosen.has(i)), ...single(again.patterns)];
  }
  return { patterns: sticks, sticks: sticks.length };
};

/** Whole numbers below a limit that look random and are the same every time (Lehmer's generator, modulus 2^31 - 1). */
const drawing = (): ((below: number) => number) => {
  let state = 20_270_405;
  return (below) => {
    state = (state * 48_271) % 2_147_483_647;
    return state % below;
  };
};

/**
 * Cuts so many of each kind from as few sticks as it can: sequential value correction, packing after packing by the
 * worth of cuts, which grows for those that came out badly; then parts of the best packing again. Every round also proves
 * a number of sticks that no packing can beat (worth of all cuts by the worth of the fullest stick); it stops when the
 * best packing reaches that, or when the counted effort is spent. `room` and `capacity` in mm, both with the kerf added.
 * Source: after Mukhacheva, Belov, Kartack and Mukhacheva (2000) and Belov and Scheithauer (2007), from memory.
 *
 * Example: rooms 1153 and 553 (kerf 3), 10 and 20 wanted, capacity 6003: 4 sticks.
 */
export const fewestSticks = (room: number[], wanted: number[], capacity: number): Packing => {
  const kinds: CutKinds = { room, worth: room, wanted };
  const least = fewestPossible(room, wanted, capacity);
  const best = packBetter(kinds, capacity, least, MOST_ROUNDS, MOST_STEPS);
  const aim = Math.max(least, best.bound);
  return best.sticks > aim ? repack(kinds, capacity, best, aim, drawing()) : best;
};
