import { isCoatDue, setUpMinutes } from '../book/mould-state.ts';
import type { DecoderState } from './decoder-state.ts';
import { placeWanted } from './holds.ts';
import { NEVER, NONE, PREP } from './problem.ts';

/** True when the mould has to be given a sealing coat before its next pour. */
export const coatDue = (state: DecoderState, mould: number): boolean =>
  isCoatDue(state.moulds.turnsSinceOil[mould]!, state.problem.moulds[mould]!.oilEveryTurns);

/** Whether a set-up in this shift includes a sealing coat: where it is due, and earlier where the choices say so. */
export const coats = (state: DecoderState, mould: number): boolean => {
  if (coatDue(state, mould)) return true;
  const { oilEveryTurns } = state.problem.moulds[mould]!;
  return state.choices.coatEarly && oilEveryTurns < NEVER && state.moulds.turnsSinceOil[mould]! > 0;
};

/**
 * Minutes of setting a mould up for a casting (R6), after a strip of what it holds if `stripped`: setting up, cleaning
 * where it is dirty or stripped, changing over, and the sealing coat where `coated`, without its drying.
 *
 * Example: 14 to set up, 6 to clean, 12 to change over: 32 after a strip of another casting, 14 clean and set for this
 * one.
 */
export const prepMinutes = (
  state: DecoderState,
  mould: number,
  casting: number,
  coated: boolean,
  stripped: boolean,
): number => {
  const of = state.problem.moulds[mould]!;
  const setFor = stripped ? state.moulds.held[mould]! : state.moulds.setFor[mould]!;
  const dirty = stripped || state.moulds.dirty[mould] === 1;
  const change = setFor === casting ? 0 : of.change[casting]!;
  return setUpMinutes(state.problem.castings[casting]!, of.oilMinutes, change, dirty, coated);
};

/** Places a set-up of a mould; the minutes are taken already. */
export const placePrep = (
  state: DecoderState,
  mould: number,
  casting: number,
  start: number,
  minutes: number,
  coated: boolean,
): void => {
  const { moulds, demand } = state;
  moulds.preppedFor[mould] = casting;
  moulds.prepStart[mould] = start;
  moulds.prepEnd[mould] = start + minutes;
  moulds.coated[mould] = coated ? 1 : 0;
  moulds.batchFrom[mould] = start + minutes + (coated ? state.problem.moulds[mould]!.oilDryMinutes : 0);
  demand.prepped[casting] = demand.prepped[casting]! + 1;
};

/** A mould set up for what nobody needs any more counts as not set up. */
export const forgetUnneededPrep = (state: DecoderState, mould: number): void => {
  const casting = state.moulds.preppedFor[mould]!;
  const { need, head, end } = state.demand;
  // An order that is held back needs its pieces later: what is set up for them stays so (R6).
  if (casting === NONE || need[casting]! > 0 || head[casting]! < end[casting]!) return;
  state.moulds.preppedFor[mould] = NONE;
  state.demand.prepped[casting] = state.demand.prepped[casting]! - 1;
};

const isEmptyAndFree = (state: DecoderState, mould: number): boolean =>
  state.moulds.held[mould] === NONE &&
  state.moulds.preppedFor[mould] === NONE &&
  state.moulds.reserved[mould] === 0 &&
  mould !== state.choices.restMould &&
  state.moulds.freeAt[mould]! < state.timeline.to;

/**
 * Sets up, late in the shift, moulds that are due for a sealing coat: it dries overnight, and in the next session they
 * can be poured at once.
 */
export const coatAhead = (state: DecoderState): void => {
  const { moulds, demand, problem, timeline } = state;
  for (let k = 0; k < problem.moulds.length; k++) {
    if (!isEmptyAndFree(state, k) || !coatDue(state, k)) continue;
    const casting = problem.moulds[k]!.makes.find((x) => demand.need[x.casting]! > demand.prepped[x.casting]!)?.casting;
    if (casting === undefined) continue;
    const minutes = prepMinutes(state, k, casting, true, false);
    const start = timeline.latest(PREP, minutes, 1, moulds.freeAt[k]!);
    if (start === NONE) continue;
    timeline.take(start, minutes, 1);
    placePrep(state, k, casting, start, minutes, true);
  }
};

/** Empty moulds for the casting: those set for it before those to change, those that make little else and are free first. */
const emptyMoulds = (state: DecoderState, casting: number): number[] => {
  const cost = (k: number) => (state.moulds.setFor[k] === casting ? 0 : 100) + state.problem.moulds[k]!.makes.length;
  return state.problem.castings[casting]!.moulds.filter((k) => isEmptyAndFree(state, k)).sort(
    (a, b) => cost(a) - cost(b) || state.moulds.freeAt[a]! - state.moulds.freeAt[b]! || a - b,
  );
};

const prepOne = (state: DecoderState, mould: number, casting: number): boolean => {
  const due = coats(state, mould);
  const soon = isCoatDue(state.moulds.turnsSinceOil[mould]! + 1, state.problem.moulds[mould]!.oilEveryTurns);
  const coated = due || (state.choices.coatAhead && soon);
  const minutes = prepMinutes(state, mould, casting, coated, false);
  const start = state.timeline.earliest(PREP, minutes, 1, state.moulds.freeAt[mould]!);
  if (start === NONE) return false;
  state.timeline.take(start, minutes, 1);
  placePrep(state, mould, casting, start, minutes, coated);
  return true;
};

/**
 * Uses what is left of a shift to set moulds up for the next one, those for the first orders of the sequence first:
 * minutes spent now are minutes the next session has for pours.
 */
export const prepAhead = (state: DecoderState): void => {
  const { demand, timeline } = state;
  const castings: number[] = [];
  for (let c = 0; c < demand.need.length; c++) if (demand.need[c]! > demand.prepped[c]!) castings.push(c);
  castings.sort((a, b) => placeWanted(state, a) - placeWanted(state, b) || a - b);
  for (const casting of castings)
    for (const mould of emptyMoulds(state, casting)) {
      if (demand.need[casting]! <= demand.prepped[casting]! || timeline.firstFree >= timeline.to) break;
      prepOne(state, mould, casting);
    }
};
