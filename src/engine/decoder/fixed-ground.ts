import type { KeptBatch, KeptPour } from './fixed.ts';
import { NEVER, NONE, type Problem } from './problem.ts';
import type { Stock } from './stock.ts';

/** What is known of a mould while firm batches are looked at one after another. */
export interface MouldThen {
  freeAt: number;
  held: number;
  outAt: number;
  curedAt: number;
  setFor: number;
  dirty: boolean;
  prepped: boolean;
  turnsSinceOil: number;
  /** When the plan that the firm pours come from strips what it holds; NONE where that is not known. */
  stripAt: number;
}

/** Something that cures on the rack: from when, until when, and the spaces it takes. */
interface Lying {
  from: number;
  until: number;
  spaces: number;
}

/**
 * What firm batches looked at so far leave: people by minute of `Shifts`, batches that are mixing at it, moulds, rack
 * and stock.
 */
export interface Then {
  problem: Problem;
  people: Uint16Array;
  /** People that firm batches and set-ups not looked at yet will take: strips keep out of their way where they can. */
  ahead: Int32Array;
  mixing: Uint16Array;
  moulds: MouldThen[];
  lying: Lying[];
  stock: Stock;
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
  then: Then,
  kind: number,
  start: number,
  minutes: number,
  people: number,
  sparing?: Int32Array,
): boolean => {
  const { shifts } = then.problem;
  const shift = shiftAt(then.problem, start, start + minutes);
  if (shift === NONE) return false;
  const first = shifts.offset[shift]! + start - shifts.from[shift]!;
  for (let i = first; i < first + minutes; i++)
    if (then.people[i]! - (sparing?.[i] ?? 0) < people || (shifts.allow[i]! & kind) === 0) return false;
  return true;
};

/** Takes people for a task that `fits`; nothing is checked. */
export const take = (then: Then, start: number, minutes: number, people: number): void => {
  const { shifts } = then.problem;
  const shift = shiftAt(then.problem, start, start + minutes);
  const first = shifts.offset[shift]! + start - shifts.from[shift]!;
  for (let i = first; i < first + minutes; i++) then.people[i] = then.people[i]! - people;
};

/** Counts people in or out of those that firm tasks still to be looked at will take. */
const lookAhead = (then: Then, start: number, minutes: number, people: number): void => {
  const { shifts } = then.problem;
  const shift = shiftAt(then.problem, start, start + minutes);
  if (shift === NONE) return;
  const first = shifts.offset[shift]! + start - shifts.from[shift]!;
  for (let i = first; i < first + minutes; i++) then.ahead[i] = then.ahead[i]! + people;
};

/**
 * Counts the people of a batch and its set-ups in (1) or out (-1) of those that firm tasks still to be looked at will
 * take.
 */
export const lookAheadTo = (then: Then, batch: KeptBatch, sign: 1 | -1): void => {
  lookAhead(then, batch.start, batch.minutes, sign * then.problem.mixes[batch.mix]!.crew);
  for (const pour of batch.pours) lookAhead(then, pour.prepStart, pour.prepMinutes, sign);
};

/** How every mould stands at `now`, by index. What a filled one holds is out and cured by age (R7, R8). */
export const mouldsAtStart = (problem: Problem): MouldThen[] => {
  const moulds = problem.moulds.map((m) => ({
    freeAt: m.usableFrom,
    held: NONE,
    outAt: NEVER,
    curedAt: NEVER,
    setFor: m.setFor,
    dirty: m.dirty,
    prepped: m.prepped,
    turnsSinceOil: m.turnsSinceOil,
    stripAt: NONE,
  }));
  for (const piece of problem.inMould) {
    const { ageing, demouldMinutes, cureMinutes } = problem.mixes[problem.castings[piece.casting]!.mix]!;
    Object.assign(moulds[piece.mould]!, {
      held: piece.casting,
      outAt: ageing.whenAged(piece.filledAt, demouldMinutes),
      curedAt: ageing.whenAged(piece.filledAt, cureMinutes),
      prepped: false,
    });
  }
  return moulds;
};

/**
 * A firm pour is in its mould: full, dirty, one more turn since the last coat, and out by age (R7). `stripAt` is when
 * its old plan strips it, NONE where that is not known.
 */
export const settleMould = (then: Then, batch: KeptBatch, pour: KeptPour, stripAt: number): void => {
  const { problem } = then;
  const casting = problem.castings[pour.casting]!;
  const { ageing, demouldMinutes, cureMinutes } = problem.mixes[batch.mix]!;
  const filled = pour.fillStart + casting.fillMinutes;
  const mould = then.moulds[pour.mould]!;
  Object.assign(mould, {
    held: pour.casting,
    outAt: ageing.whenAged(filled, demouldMinutes),
    curedAt: ageing.whenAged(filled, cureMinutes),
    setFor: pour.casting,
    dirty: true,
    prepped: false,
    turnsSinceOil: (pour.coated ? 0 : mould.turnsSinceOil) + 1,
    stripAt,
  });
};
