import { curedAt, outAt } from '../book/curing-times.ts';
import { turnsAfterPour } from '../book/mould-state.ts';
import type { FixedBatch, FixedCoat, FixedPour, RackHold } from './fixed-batch.ts';
import type { FixedStock } from './fixed-stock.ts';
import { NEVER, NONE, type Problem } from './problem.ts';

/** What is known of a mould while fixed batches are looked at one after another. */
export interface FixedMould {
  freeAt: number;
  held: number;
  outAt: number;
  curedAt: number;
  setFor: number;
  dirty: boolean;
  prepped: boolean;
  turnsSinceOil: number;
  /** Id of the fixed pour that filled it; null for a piece that is in it now. */
  heldPour: string | null;
}

/** So many people taken for so many minutes from one on, as an index of `Shifts`. */
interface Taken {
  first: number;
  minutes: number;
  people: number;
}

/**
 * What fixed batches looked at so far leave: people by minute of `Shifts`, batches that are mixing at it, moulds, rack
 * and stock.
 */
export interface FixedGround {
  problem: Problem;
  people: Uint16Array;
  /** People taken so far, in turn, so that what was tried can be given back. */
  taken: Taken[];
  /** People that fixed batches and set-ups not looked at yet will take: strips keep out of their way where they can. */
  ahead: Int32Array;
  mixing: Uint16Array;
  moulds: FixedMould[];
  lying: RackHold[];
  stock: FixedStock;
  /** When what is in its mould before a fixed pour is best stripped, where that was found for all of them together. */
  stripsFirst: Map<FixedPour, number>;
  /** When the pieces that are in moulds now are to be stripped, by mould, where that is fixed. */
  stripNow: ReadonlyMap<number, number>;
}

/**
 * The shift in which a task from one minute to another, itself not included, lies whole; NONE where no shift holds it.
 */
export const shiftAt = (problem: Problem, start: number, end: number): number => {
  const { shifts } = problem;
  for (let s = 0; s < shifts.count; s++) if (start >= shifts.from[s]! && end <= shifts.to[s]!) return s;
  return NONE;
};

/**
 * True when a task of a kind (one bit, as in `Shifts.allow`) lies whole in a shift that allows it, with people enough
 * at each minute. `sparing` are people, by minute of `Shifts`, that have to be left as well.
 */
export const fits = (
  ground: FixedGround,
  kind: number,
  start: number,
  minutes: number,
  people: number,
  sparing?: Int32Array,
): boolean => {
  const { shifts } = ground.problem;
  const shift = shiftAt(ground.problem, start, start + minutes);
  if (shift === NONE) return false;
  const first = shifts.offset[shift]! + start - shifts.from[shift]!;
  for (let i = first; i < first + minutes; i++)
    if (ground.people[i]! - (sparing?.[i] ?? 0) < people || (shifts.allow[i]! & kind) === 0) return false;
  return true;
};

/** Takes people for a task that `fits`; nothing is checked. */
export const take = (ground: FixedGround, start: number, minutes: number, people: number): void => {
  const { shifts } = ground.problem;
  const shift = shiftAt(ground.problem, start, start + minutes);
  const first = shifts.offset[shift]! + start - shifts.from[shift]!;
  for (let i = first; i < first + minutes; i++) ground.people[i] = ground.people[i]! - people;
  ground.taken.push({ first, minutes, people });
};

/** How much was taken and put on the rack so far. */
export interface Mark {
  taken: number;
  lying: number;
}

/** Marks what is taken and lies on the rack, to come back to it. */
export const markOf = ({ taken, lying }: FixedGround): Mark => ({ taken: taken.length, lying: lying.length });

/** Gives back all people taken, and all room on the rack, since a mark. */
export const backTo = (ground: FixedGround, mark: Mark): void => {
  while (ground.taken.length > mark.taken) {
    const { first, minutes, people } = ground.taken.pop()!;
    for (let i = first; i < first + minutes; i++) ground.people[i] = ground.people[i]! + people;
  }
  ground.lying.length = mark.lying;
};

/** Counts people in (or out, negative) of those that fixed tasks still to be looked at will take. */
export const lookAhead = (ground: FixedGround, start: number, minutes: number, people: number): void => {
  const { shifts } = ground.problem;
  const shift = shiftAt(ground.problem, start, start + minutes);
  if (shift === NONE) return;
  const first = shifts.offset[shift]! + start - shifts.from[shift]!;
  for (let i = first; i < first + minutes; i++) ground.ahead[i] = ground.ahead[i]! + people;
};

/**
 * Counts the people of a batch and its set-ups in (1) or out (-1) of those that fixed tasks still to be looked at will
 * take.
 */
export const lookAheadTo = (ground: FixedGround, batch: FixedBatch, sign: 1 | -1): void => {
  lookAhead(ground, batch.start, batch.minutes, sign * ground.problem.mixes[batch.mix]!.crew);
  for (const pour of batch.pours) {
    lookAhead(ground, pour.prepStart, pour.prepMinutes, sign);
    if (pour.coat) lookAhead(ground, pour.coat.start, pour.coat.minutes, sign);
  }
};

/** A mould is stripped of what it holds: empty, dirty, and free at the end of that. */
export const settleStrip = (problem: Problem, mould: FixedMould, start: number): void => {
  const end = start + problem.castings[mould.held]!.stripMinutes;
  Object.assign(mould, { setFor: mould.held, held: NONE, dirty: true, freeAt: Math.max(mould.freeAt, end) });
};

/** A mould has got its sealing coat: clean and bare, and free when that is dry. */
export const settleCoat = (problem: Problem, mould: FixedMould, { mould: k, start, minutes }: FixedCoat): void => {
  const freeAt = start + minutes + problem.moulds[k]!.oilDryMinutes;
  Object.assign(mould, { dirty: false, prepped: false, turnsSinceOil: 0, freeAt });
};

/** How every mould stands at `now`, by index. What a filled one holds is out and cured by age (R7, R8). */
export const mouldsAtStart = (problem: Problem): FixedMould[] => {
  const moulds = problem.moulds.map((m) => ({
    freeAt: m.usableFrom,
    held: NONE,
    outAt: NEVER,
    curedAt: NEVER,
    setFor: m.setFor,
    dirty: m.dirty,
    prepped: m.prepped,
    turnsSinceOil: m.turnsSinceOil,
    heldPour: null as string | null,
  }));
  for (const piece of problem.inMould) {
    const mix = problem.mixes[problem.castings[piece.casting]!.mix]!;
    Object.assign(moulds[piece.mould]!, {
      held: piece.casting,
      outAt: outAt(mix, piece.filledAt),
      curedAt: curedAt(mix, piece.filledAt),
      prepped: false,
    });
  }
  for (const { mould, start } of problem.begun.strips) settleStrip(problem, moulds[mould]!, start);
  return moulds;
};

/** A fixed pour is in its mould: full, dirty, one more turn since the last coat, and out by age (R7). */
export const settleMould = (ground: FixedGround, batch: FixedBatch, pour: FixedPour): void => {
  const { problem } = ground;
  const casting = problem.castings[pour.casting]!;
  const mix = problem.mixes[batch.mix]!;
  const filled = pour.fillStart + casting.fillMinutes;
  const mould = ground.moulds[pour.mould]!;
  Object.assign(mould, {
    held: pour.casting,
    outAt: outAt(mix, filled),
    curedAt: curedAt(mix, filled),
    setFor: pour.casting,
    dirty: true,
    prepped: false,
    turnsSinceOil: turnsAfterPour(mould.turnsSinceOil, pour.coat !== null),
    heldPour: pour.id,
  });
};
