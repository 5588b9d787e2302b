import { coatMinutes, isCoatDue, setUpMinutes } from '../book/mould-state.ts';
import { sortFew } from '../sort-few.ts';
import type { DecoderState } from './decoder-state.ts';
import { placeWanted } from './holds.ts';
import { NEVER, NONE, PREP } from './problem.ts';

/** True when the mould has to be given a sealing coat before it is set up again. */
export const coatDue = (state: DecoderState, mould: number): boolean =>
  isCoatDue(state.moulds.turnsSinceOil[mould]!, state.problem.moulds[mould]!.oilEveryTurns);

/** Whether a sealing coat comes before the next set-up: where it is due, and earlier where the choices say so. */
export const coats = (state: DecoderState, mould: number): boolean => {
  if (coatDue(state, mould)) return true;
  const { oilEveryTurns } = state.problem.moulds[mould]!;
  return state.choices.coatEarly && oilEveryTurns < NEVER && state.moulds.turnsSinceOil[mould]! > 0;
};

/** Casting that a mould is set for once what it holds, if `stripped`, is out of it. */
const setForOf = ({ moulds }: DecoderState, mould: number, stripped: boolean): number =>
  stripped ? moulds.held[mould]! : moulds.setFor[mould]!;

/**
 * Minutes of setting a mould up for a casting (R6), after a strip of what it holds if `stripped`: setting up, cleaning
 * where it is dirty or stripped and no coat (`coated`) comes before, changing over.
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
  const dirty = !coated && (stripped || state.moulds.dirty[mould] === 1);
  const change = setForOf(state, mould, stripped) === casting ? 0 : state.problem.moulds[mould]!.change[casting]!;
  return setUpMinutes(state.problem.castings[casting]!, change, dirty);
};

/**
 * Minutes of giving a mould its sealing coat, after a strip of what it holds if `stripped`: cleaning it, then the coat.
 * Drying comes after them.
 */
export const minutesToCoat = (state: DecoderState, mould: number, stripped: boolean): number => {
  const setFor = state.problem.castings[setForOf(state, mould, stripped)]!;
  return coatMinutes(state.problem.moulds[mould]!.oilMinutes, setFor, stripped || state.moulds.dirty[mould] === 1);
};

/** Places a sealing coat of an empty mould that is not set up; the minutes are taken already. */
export const placeCoat = (state: DecoderState, mould: number, start: number, minutes: number): void => {
  const { moulds, problem } = state;
  moulds.coatStart[mould] = start;
  moulds.coatEnd[mould] = start + minutes;
  moulds.freeAt[mould] = start + minutes + problem.moulds[mould]!.oilDryMinutes;
  moulds.dirty[mould] = 0;
  moulds.turnsSinceOil[mould] = 0;
};

/** Places a set-up of a mould; the minutes are taken already. */
export const placePrep = (
  state: DecoderState,
  mould: number,
  casting: number,
  start: number,
  minutes: number,
): void => {
  const { moulds, demand } = state;
  moulds.preppedFor[mould] = casting;
  moulds.prepStart[mould] = start;
  moulds.prepEnd[mould] = start + minutes;
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

/** Moulds with a fresh coat that dries past the shift: so many less have to be made ready for the casting. */
const drying = ({ moulds, timeline }: DecoderState, casting: number): number => {
  let count = 0;
  for (let k = 0; k < moulds.coatStart.length; k++)
    if (moulds.coatStart[k] !== NONE && moulds.preppedFor[k] === NONE && moulds.setFor[k] === casting)
      if (moulds.freeAt[k]! >= timeline.to) count++;
  return count;
};

/** Pieces of a casting for which no mould is set up or drying. */
const withoutMould = (state: DecoderState, casting: number): number => {
  const left = state.demand.need[casting]! - state.demand.prepped[casting]!;
  return left <= 0 ? left : left - drying(state, casting);
};

/** Takes the minutes of a coat and places it; nothing where there was no start for it. */
const coatAt = (state: DecoderState, mould: number, start: number, minutes: number): void => {
  if (start === NONE) return;
  state.timeline.take(start, minutes, 1);
  placeCoat(state, mould, start, minutes);
};

/**
 * Coats, late in the shift, moulds that are due for it: they dry overnight, and in the next session they can be set up at
 * once.
 */
export const coatAhead = (state: DecoderState): void => {
  const { moulds, problem, timeline } = state;
  for (let k = 0; k < problem.moulds.length; k++) {
    if (!isEmptyAndFree(state, k) || !coatDue(state, k)) continue;
    if (!problem.moulds[k]!.makes.some((x) => withoutMould(state, x.casting) > 0)) continue;
    const minutes = minutesToCoat(state, k, false);
    coatAt(state, k, timeline.latest(PREP, minutes, 1, moulds.freeAt[k]!), minutes);
  }
};

/** Empty moulds for the casting: those set for it before those to change, those that make little else and are free first. */
const emptyMoulds = (state: DecoderState, casting: number): number[] => {
  const cost = (k: number) => (state.moulds.setFor[k] === casting ? 0 : 100) + state.problem.moulds[k]!.makes.length;
  return sortFew(
    state.problem.castings[casting]!.moulds.filter((k) => isEmptyAndFree(state, k)),
    (a, b) => cost(a) - cost(b) || state.moulds.freeAt[a]! - state.moulds.freeAt[b]! || a - b,
  );
};

/** Whether a mould is to be coated with what is left of a shift: where it is due, or will be a turn later and now is better. */
const isToBeCoated = (state: DecoderState, mould: number): boolean => {
  if (coats(state, mould)) return true;
  const turns = state.moulds.turnsSinceOil[mould]!;
  return state.choices.coatAhead && turns > 0 && isCoatDue(turns + 1, state.problem.moulds[mould]!.oilEveryTurns);
};

const coatOne = (state: DecoderState, mould: number): void => {
  if (!isToBeCoated(state, mould)) return;
  const minutes = minutesToCoat(state, mould, false);
  coatAt(state, mould, state.timeline.earliest(PREP, minutes, 1, state.moulds.freeAt[mould]!), minutes);
};

const prepOne = (state: DecoderState, mould: number, casting: number): void => {
  if (coatDue(state, mould)) return;
  const minutes = prepMinutes(state, mould, casting, false, false);
  const start = state.timeline.earliest(PREP, minutes, 1, state.moulds.freeAt[mould]!);
  if (start === NONE) return;
  state.timeline.take(start, minutes, 1);
  placePrep(state, mould, casting, start, minutes);
};

/** 0 for a casting that an empty mould is set for, 1 for another one; where moulds may be changed over freely 0 for each. */
const changeFor = (state: DecoderState, casting: number): number =>
  state.choices.changeSeldom && !emptyMoulds(state, casting).some((k) => state.moulds.setFor[k] === casting) ? 1 : 0;

/** Castings that lack moulds, those wanted first in front. */
const castingsWanted = (state: DecoderState): number[] => {
  const castings: number[] = [];
  for (let c = 0; c < state.demand.need.length; c++) if (withoutMould(state, c) > 0) castings.push(c);
  if (castings.length < 2) return castings;
  const change = castings.map((c) => changeFor(state, c));
  const order = castings.map((_, i) => i);
  sortFew(
    order,
    (a, b) => change[a]! - change[b]! || placeWanted(state, castings[a]!) - placeWanted(state, castings[b]!) || a - b,
  );
  return order.map((i) => castings[i]!);
};

/** How empty moulds are made ready in what is left of the shift: not at all where none is free in it, coated where one is to be. */
const waysToMakeReady = (state: DecoderState): (typeof prepOne)[] => {
  let isAnyEmpty = false;
  for (let k = 0; k < state.problem.moulds.length; k++) {
    if (!isEmptyAndFree(state, k)) continue;
    isAnyEmpty = true;
    if (isToBeCoated(state, k)) return [coatOne, prepOne];
  }
  return isAnyEmpty ? [prepOne] : [];
};

/**
 * Uses what is left of a shift to make moulds ready for the next one, those for the first orders of the sequence first:
 * minutes spent now are minutes the next session has for pours. Coats come before set-ups: they dry meanwhile.
 */
export const prepAhead = (state: DecoderState): void => {
  if (state.timeline.firstFree >= state.timeline.to) return;
  for (const makeReady of waysToMakeReady(state))
    for (const casting of castingsWanted(state))
      for (const mould of emptyMoulds(state, casting)) {
        if (withoutMould(state, casting) <= 0 || state.timeline.firstFree >= state.timeline.to) break;
        makeReady(state, mould, casting);
      }
};
