import { decodeWhile } from '../decoder/decode.ts';
import type { DecoderState } from '../decoder/decoder-state.ts';
import type { Dispatch } from '../decoder/dispatch.ts';
import { NEVER, NONE, type Problem } from '../decoder/problem.ts';
import { type Asking, daysAfterAim, daysLateOf, type Present } from './present.ts';
import { handoverOn } from './promise.ts';

/** When the new order can be complete, NEVER if it cannot, and the dispatch that makes it so. */
export interface Earliest {
  completesAt: number;
  dispatch: Dispatch | null;
  /** The same dispatch as a longer search found it, where one did. */
  longer?: Dispatch | null;
}

/** No plan has the new order. */
export const NOWHERE: Earliest = { completesAt: NEVER, dispatch: null };

/**
 * What may not get later: "aimed": no date that was given or asked for; "given": no date that was given. An order that is
 * planned stays planned either way.
 */
export type Guard = 'aimed' | 'given';

/** The orders left out that are left out at present; the new one has to fit in beside the others. */
const leaveOut = (state: DecoderState, present: Present): void => {
  state.orders.excluded.fill(0);
  state.orders.excluded.set(present.leftOut);
};

/** True when an order that is still to be finished will be later than it is at present. */
const breaksDate = ({ state, problem, inTurn }: Asking, limits: readonly number[]): boolean => {
  for (let o = 0; o < limits.length; o++) {
    if (state.orders.completesAt[o] !== NONE || state.orders.excluded[o]) continue;
    if (handoverOn(problem, Math.min(inTurn.soonest(o), problem.horizonEnd - 1)) > limits[o]!) return true;
  }
  return false;
};

/** By order: the last day on which it may be handed over, or complete to keep its sessions in hand. */
const limitsOf = ({ problem }: DecoderState, present: Present, guard: Guard): number[] => {
  const days =
    guard === 'aimed'
      ? present.daysAfterAim.map((late, o) => problem.orders[o]!.aimDay + late)
      : present.daysLate.map((late, o) => problem.orders[o]!.dueDay + late);
  return days.map((day, o) => Math.min(day, lastDayOf(problem, present.until[o]!)));
};

/** What is complete by then waits for its hand-over day, which may be days later. */
const lastDayOf = (problem: Problem, until: number): number =>
  until >= NEVER ? NEVER : handoverOn(problem, Math.min(until, problem.horizonEnd - 1));

/** Whether the plan in `state` keeps all that is guarded, as far as the present one does. */
const holds = (state: DecoderState, present: Present, guard: Guard): boolean => {
  const [now, then] =
    guard === 'aimed' ? [daysAfterAim(state), present.daysAfterAim] : [daysLateOf(state), present.daysLate];
  const { completesAt } = state.orders;
  return then.every((days, o) => now[o]! <= days && completesAt[o]! <= present.until[o]!);
};

/**
 * When the new order is complete under a dispatch, if nothing that is guarded gets later by it and it is before a minute;
 * NEVER otherwise. Ends as soon as one of the two is out of reach.
 */
export const completesUnder = (
  asking: Asking,
  dispatch: Dispatch,
  present: Present,
  guard: Guard,
  before = NEVER,
): number => {
  const { state, added, inTurn } = asking;
  leaveOut(state, present);
  const limits = limitsOf(state, present, guard);
  const isMade = decodeWhile(
    state,
    dispatch,
    (shift) => !inTurn.look(shift) || inTurn.soonest(added) >= before || breaksDate(asking, limits),
  );
  const completesAt = state.orders.completesAt[added]!;
  if (!isMade || completesAt === NONE || completesAt >= before) return NEVER;
  return holds(state, present, guard) ? completesAt : NEVER;
};

/** The better of what is known and a dispatch: that one where the new order is complete sooner by it and nothing guarded is later. */
export const soonerUnder = (
  asking: Asking,
  dispatch: Dispatch,
  present: Present,
  guard: Guard,
  best: Earliest,
): Earliest => {
  const completesAt = completesUnder(asking, dispatch, present, guard, best.completesAt);
  return completesAt < best.completesAt ? { completesAt, dispatch } : best;
};
