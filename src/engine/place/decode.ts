import type { Dispatch } from './dispatch.ts';
import { choicesIn } from './dispatch.ts';
import type { Placing } from './placing.ts';
import { NEVER, NONE } from './problem.ts';
import { workShift } from './shift.ts';
import { restoreSnapshot, type Snapshot, takeSnapshot } from './snapshot.ts';
import { releaseHeldBack, startPlacing } from './start.ts';

/** Snapshots at the start of each shift of one plan. */
export interface Course {
  snapshots: Snapshot[];
}

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

const runShifts = (at: Placing, dispatch: Dispatch, first: number, course?: Course): void => {
  for (let s = first; s < at.problem.shifts.count; s++) {
    if (at.orders.open === 0 && !anyMouldBusy(at)) break;
    if (course) course.snapshots[s] = takeSnapshot(at, course.snapshots[s]);
    at.choices = choicesIn(dispatch, s);
    if (dispatch.heldBack?.shift === s) releaseHeldBack(at);
    workShift(at, s);
  }
};

const repairEnd = (at: Placing, dispatch: Dispatch): void => {
  for (let stuck = firstUnstripped(at); stuck <= at.pourUntil && stuck < NEVER; stuck = firstUnstripped(at)) {
    at.pourUntil = stuck - 1;
    startPlacing(at);
    runShifts(at, dispatch, 0);
  }
};

/**
 * Turns a dispatch into a plan, session by session from `now` on; the plan is left in `at`. An order whose
 * `orders.completesAt` is NONE could not be finished. Every pour in the plan is stripped within the horizon: where one
 * would not be, nothing is poured from then on. A `course` is filled with snapshots, to go on from later.
 */
export const decode = (at: Placing, dispatch: Dispatch, course?: Course): void => {
  at.dispatch = dispatch;
  at.pourUntil = NEVER;
  startPlacing(at);
  runShifts(at, dispatch, 0, course);
  repairEnd(at, dispatch);
};

/**
 * As `decode`, for a dispatch that differs only in its choices from shift `first` on from the one whose course this is:
 * what lies before is taken from the course. Snapshots after `first` are then those of the new plan.
 */
export const decodeFrom = (at: Placing, dispatch: Dispatch, first: number, course: Course): void => {
  at.dispatch = dispatch;
  at.pourUntil = NEVER;
  restoreSnapshot(at, course.snapshots[first]!);
  runShifts(at, dispatch, first, course);
  repairEnd(at, dispatch);
};
