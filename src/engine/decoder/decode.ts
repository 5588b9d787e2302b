import type { Placing } from './decoder-state.ts';
import type { Dispatch } from './dispatch.ts';
import { choicesIn } from './dispatch.ts';
import { NEVER, NONE } from './problem.ts';
import { workShift } from './shift.ts';
import { releaseHeldBack, startPlacing } from './start.ts';

/** Some mould holds a piece, or waits for a firm pour. */
const anyMouldBusy = (at: Placing): boolean => {
  const { held, reserved } = at.moulds;
  for (let k = 0; k < held.length; k++) if (held[k] !== NONE || reserved[k]! > 0) return true;
  return false;
};

/** End of the first fill whose piece is still in its mould; NEVER when all pours are out. */
const firstUnstripped = (at: Placing): number => {
  let first = NEVER;
  for (let k = 0; k < at.moulds.held.length; k++)
    if (at.moulds.held[k] !== NONE && at.moulds.heldPour[k] !== NONE)
      first = Math.min(first, at.placed.pourFillEnd[at.moulds.heldPour[k]!]!);
  return first;
};

/** Looks at a plan half made, at the start of a shift; true ends it there. */
export type ShiftLook = (shift: number) => boolean;

/** Works the shifts from one on until nothing is left to do; returns the shift it ended before. */
export const workShifts = (at: Placing, dispatch: Dispatch, first: number, look?: ShiftLook): number => {
  for (let s = first; s < at.problem.shifts.count; s++) {
    if (at.orders.open === 0 && !anyMouldBusy(at)) return s;
    if (look?.(s)) return s;
    at.choices = choicesIn(dispatch, s);
    if (dispatch.heldBack?.shift === s) releaseHeldBack(at);
    workShift(at, s);
  }
  return at.problem.shifts.count;
};

/**
 * Begins again with nothing poured from the first piece on that would stay in its mould past the horizon. True when it had
 * to: the plan is then another one from its start.
 */
export const repairEnd = (at: Placing, dispatch: Dispatch): boolean => {
  let repaired = false;
  for (let stuck = firstUnstripped(at); stuck <= at.pourUntil && stuck < NEVER; stuck = firstUnstripped(at)) {
    at.pourUntil = stuck - 1;
    startPlacing(at);
    workShifts(at, dispatch, 0);
    repaired = true;
  }
  return repaired;
};

/** Everything as it is at `now`, for a dispatch. */
export const beginPlan = (at: Placing, dispatch: Dispatch): void => {
  at.dispatch = dispatch;
  at.pourUntil = NEVER;
  startPlacing(at);
};

/**
 * Turns a dispatch into a plan, session by session from `now` on; the plan is left in `at`. An order whose
 * `orders.completesAt` is NONE could not be finished. Every pour in the plan is stripped within the horizon: where one
 * would not be, nothing is poured from then on.
 */
export const decode = (at: Placing, dispatch: Dispatch): void => {
  beginPlan(at, dispatch);
  workShifts(at, dispatch, 0);
  repairEnd(at, dispatch);
};

/** As `decode`, given up as soon as `look` says so: false then, and what is left in `at` is no plan. */
export const decodeWhile = (at: Placing, dispatch: Dispatch, look: ShiftLook): boolean => {
  let isGivenUp = false;
  beginPlan(at, dispatch);
  workShifts(at, dispatch, 0, (shift) => {
    isGivenUp = look(shift);
    return isGivenUp;
  });
  if (isGivenUp) return false;
  repairEnd(at, dispatch);
  return true;
};
