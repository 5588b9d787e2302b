import type { DecoderState } from '../decoder/decoder-state.ts';
import { type Choices, choicesIn, DEFAULT_CHOICES } from '../decoder/dispatch.ts';
import { NONE } from '../decoder/problem.ts';
import type { Snapshot } from '../decoder/snapshot.ts';
import { branchOff, followBranch, trajectoryOf } from '../decoder/trajectory.ts';
import { evaluate, isBetter } from './evaluation.ts';
import { type Found, foundIn } from './found.ts';
import type { PresentPours } from './nearness.ts';

/** What is half empty waits: its pieces then join a later batch, where no order gets later by it. */
const MERGING: Partial<Choices>[] = [
  { leastFill: 1, waitMinutes: 1000, mostPieces: 0 },
  { leastFill: 0.9, waitMinutes: 90, mostPieces: 0 },
  { noPours: true },
];

/** What can be done at once is not put off. */
const PULLING_EARLIER: Partial<Choices>[] = [
  { leastFill: 0, noPours: false, heldMix: NONE, restMould: NONE },
  { leastFill: 0, waitMinutes: 0, noPours: false, heldMix: NONE },
  { stripFirst: true, leaveInMoulds: false },
  { aheadFirst: true, noAhead: false },
  { slowMixesLate: false },
  DEFAULT_CHOICES,
];

/**
 * Goes through a finished plan shift by shift and takes every step that makes it better and none that makes it worse:
 * half-empty batches are merged, and what costs nothing is done earlier. Ends after a round that found nothing, or after
 * `tries` plans.
 */
export const polish = (state: DecoderState, start: Found, tries: number, present?: PresentPours): Found => {
  let best = start;
  const trajectory = trajectoryOf(state, start.dispatch);
  const spare: (Snapshot | undefined)[] = [];
  const steps = [...MERGING, ...PULLING_EARLIER];
  let left = tries;
  const tryStep = (shift: number, step: Partial<Choices>): boolean => {
    const inShift = new Map(best.dispatch.inShift).set(shift, { ...choicesIn(best.dispatch, shift), ...step });
    const dispatch = { ...best.dispatch, inShift };
    const branch = branchOff(state, dispatch, trajectory, shift, spare);
    if (!branch.isWhole || !isBetter(evaluate(state), best.evaluation)) return false;
    followBranch(state, trajectory, branch);
    best = foundIn(state, dispatch, present);
    return true;
  };
  for (let found = trajectory.isWhole; found && left > 0; ) {
    found = false;
    for (let shift = 0; shift < trajectory.shifts && left > 0; shift++)
      for (const step of steps) if (left-- > 0 && tryStep(shift, step)) found = true;
  }
  return best;
};
