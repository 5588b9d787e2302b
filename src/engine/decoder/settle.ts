import { dateOfDay } from '../../../shared/time.ts';
import { sessionsOf } from '../calendar/sessions.ts';
import { materialRefusal, type Refusal, refusals } from './admit.ts';
import { decode } from './decode.ts';
import type { DecoderState } from './decoder-state.ts';
import type { Dispatch } from './dispatch.ts';
import { NONE, type Problem } from './problem.ts';
import { isInSpells } from './spells.ts';

/** Orders dropped for lack of time that are tried again beside the rest; each try is a decode. */
const MOST_SECOND_TRIES = 12;
/** Pours placed in all by these tries, about: on the largest yards there are few of them. */
const POURS_TRIED_AGAIN = 100_000;

const secondTries = ({ orders }: Problem): number => {
  const pours = orders.reduce((n, { pieceCount }) => n + pieceCount, 0);
  return Math.min(MOST_SECOND_TRIES, Math.ceil(POURS_TRIED_AGAIN / Math.max(1, pours)));
};

const unfinished = (state: DecoderState): number[] =>
  Array.from(state.dispatch.sequence).filter((o) => !state.orders.excluded[o] && state.orders.completesAt[o] === NONE);

const longestPackingMinutes = (state: DecoderState): number => {
  const { shifts } = state.problem;
  let longest = 0;
  for (let s = 0; s < shifts.count; s++) longest = Math.max(longest, shifts.to[s]! - shifts.from[s]!);
  return longest;
};

/** Why no task fits anywhere: nobody works, or opening and clearing up take every session whole. */
const withoutHours = ({ yard, calendar }: Problem): string => {
  const { setUpMinutes, clearUpMinutes } = yard.yard;
  return sessionsOf(yard, calendar).length === 0
    ? 'no hours of work are planned'
    : `every session is too short: setting it up and clearing up take ${setUpMinutes + clearUpMinutes} minutes`;
};

/** Why an order that the last decode could not finish has to be left out. */
const refusalOf = (state: DecoderState, order: number): Refusal => {
  const { problem } = state;
  state.stock.ask();
  for (const { casting } of problem.orders[order]!.pieces) {
    const { mix, kg, perPiece, cuts, sheets } = problem.castings[casting]!;
    if (state.demand.need[casting] === 0) continue;
    state.stock.add(
      problem.mixes[mix]!.perBag,
      Math.max(problem.mixes[mix]!.bagStep, kg / problem.mixes[mix]!.yieldKgPerBag),
    );
    state.stock.add(perPiece);
    state.stock.addCuts(cuts);
    state.stock.addSheets(sheets);
  }
  if (!state.orders.partsTaken[order]) {
    state.stock.add(problem.orders[order]!.parts);
    state.stock.addCuts(problem.orders[order]!.cuts);
  }
  const short = state.stock.shortBy(problem.horizonEnd - 1);
  if (short) return materialRefusal(problem, short);
  const { packMinutes } = problem.orders[order]!;
  if (problem.shifts.count === 0) return { cause: 'time', reason: withoutHours(problem) };
  if (!isInSpells(state, order) && packMinutes > longestPackingMinutes(state))
    return { cause: 'time', reason: `packing it takes ${packMinutes} minutes and no session is that long` };
  const last = dateOfDay(problem.today + problem.yard.yard.horizonDays);
  const { notBefore } = problem.yard.orders[order]!;
  if (problem.orders[order]!.from >= problem.horizonEnd)
    return { cause: 'time', reason: `nothing is to be poured or packed for it before ${notBefore}` };
  return { cause: 'time', reason: `the sessions up to ${last} have no time for it` };
};

/**
 * Decodes a dispatch and sees to it that every order is either planned whole or left out with a reason (R11): orders that
 * cannot be made are left out before, those that do not get done are left out after, and each of these is tried once
 * more beside the others, first ones of the sequence first. The plan is left in `state`.
 */
export const settle = (state: DecoderState, dispatch: Dispatch): Map<number, Refusal> => {
  const refused = refusals(state.problem, dispatch.sequence);
  state.orders.excluded.fill(0);
  for (const order of refused.keys()) state.orders.excluded[order] = 1;
  decode(state, dispatch);
  const dropped: number[] = [];
  for (let failed = unfinished(state); failed.length > 0; failed = unfinished(state)) {
    for (const order of failed) {
      refused.set(order, refusalOf(state, order));
      dropped.push(order);
    }
    for (const order of failed) state.orders.excluded[order] = 1;
    decode(state, dispatch);
  }
  for (const order of dropped.slice(0, secondTries(state.problem))) {
    state.orders.excluded[order] = 0;
    decode(state, dispatch);
    if (unfinished(state).length === 0) {
      refused.delete(order);
      continue;
    }
    state.orders.excluded[order] = 1;
  }
  if (dropped.length > 0) decode(state, dispatch);
  return refused;
};
