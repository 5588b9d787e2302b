import { dealLots } from './deal-lots.ts';
import type { DecoderState } from './decoder-state.ts';
import type { Dispatch } from './dispatch.ts';
import { choicesIn } from './dispatch.ts';
import { releaseHeld, takeHolds } from './holds.ts';
import { NEVER, NONE } from './problem.ts';
import { workShift } from './shift.ts';
import { resetState } from './start.ts';

/** Some mould holds a piece, or waits for a fixed pour. */
const anyMouldBusy = (state: DecoderState): boolean => {
  const { held, reserved } = state.moulds;
  for (let k = 0; k < held.length; k++) if (held[k] !== NONE || reserved[k]! > 0) return true;
  return false;
};

/** A pour of a batch under way: that it was begun cannot be undone. */
const isBegun = ({ placed, problem }: DecoderState, pour: number): boolean =>
  problem.fixed.batches[placed.batchFixed[placed.pourBatch[pour]!]!]?.isBegun === true;

/** End of the first fill whose piece is still in its mould and need not have been poured; NEVER when all are out. */
const firstUnstripped = (state: DecoderState): number => {
  const { held, heldPour } = state.moulds;
  let first = NEVER;
  for (let k = 0; k < held.length; k++)
    if (held[k] !== NONE && heldPour[k] !== NONE && !isBegun(state, heldPour[k]!))
      first = Math.min(first, state.placed.pourFillEnd[heldPour[k]!]!);
  return first;
};

/** Looks at a plan half made, at the start of a shift; true ends it there. */
export type ShiftLook = (shift: number) => boolean;

/** Works the shifts from one on until nothing is left to do; returns the shift it ended before. */
export const workShifts = (state: DecoderState, dispatch: Dispatch, first: number, look?: ShiftLook): number => {
  for (let s = first; s < state.problem.shifts.count; s++) {
    if (state.orders.open === 0 && !anyMouldBusy(state)) return s;
    if (look?.(s)) return s;
    state.choices = choicesIn(dispatch, s);
    releaseHeld(state, s);
    workShift(state, s);
  }
  dealLots(state, true);
  return state.problem.shifts.count;
};

/**
 * Begins again with nothing poured from the first piece on that would stay in its mould past the horizon. True when it had
 * to: the plan is then another one from its start.
 */
export const repairEnd = (state: DecoderState, dispatch: Dispatch): boolean => {
  let repaired = false;
  for (let stuck = firstUnstripped(state); stuck <= state.pourUntil && stuck < NEVER; stuck = firstUnstripped(state)) {
    state.pourUntil = stuck - 1;
    resetState(state);
    workShifts(state, dispatch, 0);
    repaired = true;
  }
  return repaired;
};

/** Everything as it is at `now`, for a dispatch. */
export const beginPlan = (state: DecoderState, dispatch: Dispatch): void => {
  state.dispatch = dispatch;
  state.pourUntil = NEVER;
  takeHolds(state, dispatch);
  resetState(state);
};

/**
 * Turns a dispatch into a plan, session by session from `now` on; the plan is left in `state`. An order whose
 * `orders.completesAt` is NONE could not be finished. Every pour in the plan is stripped within the horizon: where one
 * would not be, nothing is poured from then on.
 */
export const decode = (state: DecoderState, dispatch: Dispatch): void => {
  beginPlan(state, dispatch);
  workShifts(state, dispatch, 0);
  repairEnd(state, dispatch);
};

/** As `decode`, given up as soon as `look` says so: false then, and what is left in `state` is no plan. */
export const decodeWhile = (state: DecoderState, dispatch: Dispatch, look: ShiftLook): boolean => {
  let isGivenUp = false;
  beginPlan(state, dispatch);
  workShifts(state, dispatch, 0, (shift) => {
    isGivenUp = look(shift);
    return isGivenUp;
  });
  if (isGivenUp) return false;
  repairEnd(state, dispatch);
  return true;
};
