import { type Placing, placeWanted } from './decoder-state.ts';
import { NEVER, NONE, PREP } from './problem.ts';

/** True when the mould has to be given a sealing coat before its next pour. */
export const coatDue = (at: Placing, mould: number): boolean =>
  at.moulds.turnsSinceOil[mould]! >= at.problem.moulds[mould]!.oilEveryTurns;

/** Whether a set-up in this shift includes a sealing coat: where it is due, and earlier where the choices say so. */
export const coats = (at: Placing, mould: number): boolean => {
  if (coatDue(at, mould)) return true;
  const { oilEveryTurns } = at.problem.moulds[mould]!;
  return at.choices.coatEarly && oilEveryTurns < NEVER && at.moulds.turnsSinceOil[mould]! > 0;
};

/**
 * Minutes of setting a mould up for a casting (R6), after a strip of what it holds if `stripped`: setting up, cleaning
 * where it is dirty or stripped, changing over, and the sealing coat where `coated`, without its drying.
 *
 * Example: 14 to set up, 6 to clean, 12 to change over: 32 after a strip of another casting, 14 clean and set for this
 * one.
 */
export const prepMinutes = (
  at: Placing,
  mould: number,
  casting: number,
  coated: boolean,
  stripped: boolean,
): number => {
  const { cleanMinutes, prepMinutes: base } = at.problem.castings[casting]!;
  const of = at.problem.moulds[mould]!;
  const setFor = stripped ? at.moulds.held[mould]! : at.moulds.setFor[mould]!;
  return (
    base +
    (stripped || at.moulds.dirty[mould] ? cleanMinutes : 0) +
    (setFor === casting ? 0 : of.change[casting]!) +
    (coated ? of.oilMinutes : 0)
  );
};

/** Writes down that a mould is set up; the minutes are taken already. */
export const recordPrep = (
  at: Placing,
  mould: number,
  casting: number,
  start: number,
  minutes: number,
  coated: boolean,
): void => {
  const { moulds, demand } = at;
  moulds.preppedFor[mould] = casting;
  moulds.prepStart[mould] = start;
  moulds.prepEnd[mould] = start + minutes;
  moulds.coated[mould] = coated ? 1 : 0;
  moulds.batchFrom[mould] = start + minutes + (coated ? at.problem.moulds[mould]!.oilDryMinutes : 0);
  demand.prepped[casting] = demand.prepped[casting]! + 1;
};

/** A mould set up for what nobody needs any more counts as not set up. */
export const forgetUnneededPrep = (at: Placing, mould: number): void => {
  const casting = at.moulds.preppedFor[mould]!;
  if (casting === NONE || at.demand.need[casting]! > 0) return;
  at.moulds.preppedFor[mould] = NONE;
  at.demand.prepped[casting] = at.demand.prepped[casting]! - 1;
};

const isEmptyAndFree = (at: Placing, mould: number): boolean =>
  at.moulds.held[mould] === NONE &&
  at.moulds.preppedFor[mould] === NONE &&
  at.moulds.reserved[mould] === 0 &&
  mould !== at.choices.restMould &&
  at.moulds.freeAt[mould]! < at.timeline.to;

/**
 * Sets up, late in the shift, moulds that are due for a sealing coat: it dries overnight, and in the next session they
 * can be poured at once.
 */
export const coatAhead = (at: Placing): void => {
  const { moulds, demand, problem, timeline } = at;
  for (let k = 0; k < problem.moulds.length; k++) {
    if (!isEmptyAndFree(at, k) || !coatDue(at, k)) continue;
    const casting = problem.moulds[k]!.makes.find((x) => demand.need[x.casting]! > demand.prepped[x.casting]!)?.casting;
    if (casting === undefined) continue;
    const minutes = prepMinutes(at, k, casting, true, false);
    const start = timeline.latest(PREP, minutes, 1, moulds.freeAt[k]!);
    if (start === NONE) continue;
    timeline.take(start, minutes, 1);
    recordPrep(at, k, casting, start, minutes, true);
  }
};

/** Empty moulds for the casting: those set for it before those to change, those that make little else and are free first. */
const emptyMoulds = (at: Placing, casting: number): number[] => {
  const cost = (k: number) => (at.moulds.setFor[k] === casting ? 0 : 100) + at.problem.moulds[k]!.makes.length;
  return at.problem.castings[casting]!.moulds.filter((k) => isEmptyAndFree(at, k)).sort(
    (a, b) => cost(a) - cost(b) || at.moulds.freeAt[a]! - at.moulds.freeAt[b]! || a - b,
  );
};

const prepOne = (at: Placing, mould: number, casting: number): boolean => {
  const due = coats(at, mould);
  const soon = at.moulds.turnsSinceOil[mould]! + 1 >= at.problem.moulds[mould]!.oilEveryTurns;
  const coated = due || (at.choices.coatAhead && soon);
  const minutes = prepMinutes(at, mould, casting, coated, false);
  const start = at.timeline.earliest(PREP, minutes, 1, at.moulds.freeAt[mould]!);
  if (start === NONE) return false;
  at.timeline.take(start, minutes, 1);
  recordPrep(at, mould, casting, start, minutes, coated);
  return true;
};

/**
 * Uses what is left of a shift to set moulds up for the next one, those for the first orders of the sequence first:
 * minutes spent now are minutes the next session has for pours.
 */
export const prepAhead = (at: Placing): void => {
  const { demand, timeline } = at;
  const castings: number[] = [];
  for (let c = 0; c < demand.need.length; c++) if (demand.need[c]! > demand.prepped[c]!) castings.push(c);
  castings.sort((a, b) => placeWanted(at, a) - placeWanted(at, b) || a - b);
  for (const casting of castings)
    for (const mould of emptyMoulds(at, casting)) {
      if (demand.need[casting]! <= demand.prepped[casting]! || timeline.firstFree >= timeline.to) break;
      prepOne(at, mould, casting);
    }
};
