import { type CutKinds, type Fill, fillStick } from './fill.ts';

/** One way to cut a stick, used several times. */
export interface Pattern {
  /** How many of each kind of cut. */
  counts: number[];
  times: number;
}

/** Cuts packed on sticks, stick by stick or alike ones together; `sticks` is how many there are in all. */
export interface Packing {
  patterns: Pattern[];
  sticks: number;
  /** Counted effort. */
  steps: number;
}

const STEPS_PER_STICK = 4000;
/** Over 1: of two fillings as full, the one with the longer cuts is worth more, since long ones are harder to place. */
const LONG_FIRST = 1.04;
/** How slowly the worth of cuts moves, round by round. */
const INERTIA = [0.5, 0.75, 1, 1.25, 1.5, 1.75, 2];

type Measured = Pick<CutKinds, 'room' | 'wanted'>;

const timesOf = (counts: number[], left: number[]): number => {
  let times = Number.POSITIVE_INFINITY;
  for (let i = 0; i < counts.length; i++)
    if (counts[i]! > 0) times = Math.min(times, Math.floor(left[i]! / counts[i]!));
  return times;
};

/** Room that a pattern takes, mm: `roomUsed([193], [4])` is 772. */
export const roomUsed = (room: ArrayLike<number>, counts: number[]): number => {
  let sum = 0;
  for (let i = 0; i < counts.length; i++) sum += counts[i]! * room[i]!;
  return sum;
};

/** Cuts that ended up on a stick with much waste become worth more, so that the next round cuts them sooner. */
const revalue = (kinds: Measured, worth: number[], pattern: Pattern, capacity: number, inertia: number): void => {
  const stretch = capacity / roomUsed(kinds.room, pattern.counts);
  for (let i = 0; i < pattern.counts.length; i++) {
    const n = pattern.counts[i]! * pattern.times;
    if (n === 0) continue;
    const held = inertia * kinds.wanted[i]!;
    worth[i] = (held * worth[i]! + n * kinds.room[i]! ** LONG_FIRST * stretch) / (held + n);
  }
};

/** One packing, stick after stick, each filled with what is worth most. `worth` is changed for the next round. */
const pack = (kinds: Measured, fill: Fill, worth: number[], capacity: number, inertia: number): Packing => {
  const left = Array.from(kinds.wanted);
  const values = worth.slice();
  const packing: Packing = { patterns: [], sticks: 0, steps: 0 };
  while (left.some((n) => n > 0)) {
    const filling = fill(values, left);
    const pattern = { counts: filling.counts, times: timesOf(filling.counts, left) };
    for (let i = 0; i < left.length; i++) left[i] = left[i]! - pattern.counts[i]! * pattern.times;
    packing.patterns.push(pattern);
    packing.sticks += pattern.times;
    packing.steps += filling.steps + left.length * 4;
    revalue(kinds, worth, pattern, capacity, inertia);
  }
  return packing;
};

/** What ends the rounds: no more than `aim` sticks, so many rounds, or so much effort. */
export interface RoundsEnd {
  aim: number;
  rounds: number;
  mostSteps: number;
}

/**
 * Packs the same cuts again and again by their worth (sequential value correction), until a packing takes no more than
 * `aim` sticks or sheets, the rounds are over or the effort is spent; the best of them. `room` is what a cut takes of
 * `capacity`: a length, or an area.
 * Source: after Belov and Scheithauer, Setup and open-stacks minimization (2007), from memory.
 *
 * Example: rooms 1153 and 553, 10 and 20 wanted, capacity 6003, filled as sticks are: 4, as few as possible.
 */
export const packFilling = (
  kinds: Measured,
  capacity: number,
  fill: Fill,
  { aim, rounds, mostSteps }: RoundsEnd,
): Packing => {
  const worth = Array.from(kinds.room, (x) => x ** LONG_FIRST);
  let best = pack(kinds, fill, worth, capacity, INERTIA[0]!);
  for (let i = 1; i < rounds && best.sticks > aim && best.steps < mostSteps; i++) {
    const next = pack(kinds, fill, worth, capacity, INERTIA[i % INERTIA.length]!);
    best = { ...(next.sticks < best.sticks ? next : best), steps: best.steps + next.steps };
  }
  return best;
};

/**
 * Packs cuts of sticks in rounds: `packFilling` with lengths.
 *
 * Example: rooms 1153 and 553, 10 and 20 wanted, capacity 6003: 4 sticks, as few as possible.
 */
export const packInRounds = (
  { room, wanted }: CutKinds,
  capacity: number,
  aim: number,
  rounds: number,
  mostSteps: number,
): Packing => {
  const fill: Fill = (worth, left) => fillStick({ room, worth, wanted: left }, capacity, STEPS_PER_STICK);
  return packFilling({ room, wanted }, capacity, fill, { aim, rounds, mostSteps });
};
