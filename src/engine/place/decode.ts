import type { Dispatch } from './dispatch.ts';
import type { Placing } from './placing.ts';
import { NEVER, NONE } from './problem.ts';
import { workShift } from './shift.ts';
import { startPlacing } from './start.ts';

const anyInMould = (at: Placing): boolean => at.moulds.held.some((casting) => casting !== NONE);

/** Start of the shift in which the first pour was made that is still in its mould; NEVER when all are out. */
const firstUnstripped = (at: Placing): number => {
  let first = NEVER;
  for (let k = 0; k < at.moulds.held.length; k++)
    if (at.moulds.held[k] !== NONE && at.moulds.heldPour[k] !== NONE)
      first = Math.min(first, at.placed.pourFillEnd[at.moulds.heldPour[k]!]!);
  return first;
};

const runShifts = (at: Placing): void => {
  startPlacing(at);
  for (let s = 0; s < at.problem.shifts.count; s++) {
    if (at.orders.open === 0 && !anyInMould(at)) break;
    workShift(at, s);
  }
};

/**
 * Turns a dispatch into a plan, session by session from `now` on; the plan is left in `at`. An order whose
 * `orders.completesAt` is NONE could not be finished. Every pour in the plan is stripped within the horizon: where one
 * would not be, nothing is poured from then on.
 */
export const decode = (at: Placing, dispatch: Dispatch): void => {
  at.dispatch = dispatch;
  at.pourUntil = NEVER;
  runShifts(at);
  for (let stuck = firstUnstripped(at); stuck < NEVER; stuck = firstUnstripped(at)) {
    at.pourUntil = stuck - 1;
    runShifts(at);
  }
};
