import { decodeWhile } from '../decoder/decode.ts';
import type { DecoderState } from '../decoder/decoder-state.ts';
import type { Dispatch } from '../decoder/dispatch.ts';
import { NEVER, NONE } from '../decoder/problem.ts';
import { poursOf } from '../search/effort.ts';
import { changeChoices, scopeOf } from '../search/moves/choices.ts';
import { below, randomFrom } from '../search/random.ts';
import { type Asking, daysLateOf, type Present, withOrderAt } from './present.ts';

/** When the new order can be complete, NEVER if it cannot, and the dispatch that makes it so. */
export interface Earliest {
  completesAt: number;
  dispatch: Dispatch | null;
}

const sooner = (a: Earliest, completesAt: number, dispatch: Dispatch): Earliest =>
  completesAt < a.completesAt ? { completesAt, dispatch } : a;

/** The orders left out that are left out at present; the new one has to fit in beside the others. */
const leaveOut = (state: DecoderState, present: Present): void => {
  state.orders.excluded.fill(0);
  state.orders.excluded.set(present.leftOut);
};

/** True when an order is still to be finished on a day on which it would be later than it is at present. */
const breaksPromise = (state: DecoderState, present: Present, day: number): boolean => {
  for (let o = 0; o < present.daysLate.length; o++)
    if (state.orders.completesAt[o] === NONE && day > state.problem.orders[o]!.dueDay + present.daysLate[o]!)
      return true;
  return false;
};

/**
 * When the new order is complete under a dispatch, if no promise gets later by it and it is before a minute; NEVER
 * otherwise. Ends as soon as one of the two is out of reach.
 */
const completesUnder = (
  state: DecoderState,
  dispatch: Dispatch,
  added: number,
  present: Present,
  before = NEVER,
): number => {
  leaveOut(state, present);
  const { from, day } = state.problem.shifts;
  const isMade = decodeWhile(
    state,
    dispatch,
    (shift) =>
      (state.orders.completesAt[added] === NONE && from[shift]! >= before) ||
      breaksPromise(state, present, day[shift]!),
  );
  const completesAt = state.orders.completesAt[added]!;
  if (!isMade || completesAt === NONE || completesAt >= before) return NEVER;
  const late = daysLateOf(state);
  return present.daysLate.every((days, o) => late[o]! <= days) ? completesAt : NEVER;
};

/** Earliest completion with the new order's pours held back to some shift, found by halving. */
const earliestBehind = ({ state, problem, added }: Asking, present: Present): Earliest => {
  const last = withOrderAt(present, present.dispatch.sequence.length, added);
  let best: Earliest = { completesAt: NEVER, dispatch: null };
  const fitsBehind = (shift: number): boolean => {
    const dispatch = { ...last, heldBack: [{ order: added, shift }] };
    const completesAt = completesUnder(state, dispatch, added, present);
    best = sooner(best, completesAt, dispatch);
    return completesAt < NEVER;
  };
  let [low, high] = [0, Math.min(present.done, problem.shifts.count - 1)];
  if (high < 0) return best;
  fitsBehind(high);
  while (low < high) {
    const middle = (low + high) >> 1;
    if (fitsBehind(middle)) high = middle;
    else low = middle + 1;
  }
  return best;
};

/** Pours placed in all by the search around the places tried, about. */
const POURS_AROUND = 2_000;
const MOST_AROUND = 120;

/** Tries other places together with other choices of the decoder's own; never later than `best`. */
const earliestAround = (
  { state, problem, added }: Asking,
  present: Present,
  best: Earliest,
  share: number,
): Earliest => {
  const random = randomFrom(1);
  const { sequence, choices } = present.dispatch;
  const tries = Math.min(MOST_AROUND, Math.floor((POURS_AROUND * share) / poursOf(problem)));
  let [earliest, liked] = [best, choices];
  for (let i = 0; i < tries; i++) {
    const changed = changeChoices(i % 3 === 0 ? choices : liked, random, scopeOf(problem));
    const place = below(random, sequence.length + 1);
    const dispatch = { ...withOrderAt(present, place, added), choices: changed };
    const completesAt = completesUnder(state, dispatch, added, present, earliest.completesAt);
    if (completesAt >= earliest.completesAt) continue;
    [earliest, liked] = [{ completesAt, dispatch }, changed];
  }
  return earliest;
};

/**
 * Earliest minute at which the new order can be complete with no promise later than at present: over places in the
 * sequence, `mostPlaces` of them evenly spread where there are more, behind all others from a shift on, and by a search
 * around these of a counted length, `share` of the usual. NEVER when it cannot be within the horizon.
 */
export const earliestOf = (asking: Asking, present: Present, mostPlaces: number, share = 1): Earliest => {
  const { sequence } = present.dispatch;
  const step = Math.max(1, Math.ceil((sequence.length + 1) / mostPlaces));
  let best = earliestBehind(asking, present);
  for (let place = 0; place <= sequence.length; place += step) {
    const dispatch = withOrderAt(present, place, asking.added);
    best = sooner(best, completesUnder(asking.state, dispatch, asking.added, present, best.completesAt), dispatch);
  }
  return earliestAround(asking, present, best, share);
};
