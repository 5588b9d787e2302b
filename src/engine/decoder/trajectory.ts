import { beginPlan, repairEnd, workShifts } from './decode.ts';
import type { DecoderState } from './decoder-state.ts';
import type { Dispatch } from './dispatch.ts';
import { takeHolds } from './holds.ts';
import { NEVER, NONE } from './problem.ts';
import { isSameState, restoreSnapshot, type Snapshot, takeSnapshot } from './snapshot.ts';

/** How a plan came about, to branch off from it at any shift. */
export interface Trajectory {
  /** What was known at the start of each shift worked, and at the end. */
  snapshots: Snapshot[];
  shifts: number;
  placed: PlacedBefore;
  /** What the dispatch's sequence settled before the first shift. */
  queueBlock: Int32Array;
  /** False for a plan that had to be begun again for want of time to strip: nothing can branch off from it. */
  isWhole: boolean;
}

/** What a plan had placed, apart from the state it was decoded in. */
interface PlacedBefore {
  ints: Int32Array;
  batchKg: Float64Array;
  batchBags: Float64Array;
}

const copyOfPlaced = ({ placedBlock, placed }: DecoderState): PlacedBefore => ({
  ints: placedBlock.slice(),
  batchKg: placed.batchKg.slice(),
  batchBags: placed.batchBags.slice(),
});

/** Puts what was placed in a plan back; its counts are in the snapshots. */
const restorePlaced = ({ placedBlock, placed }: DecoderState, from: PlacedBefore): void => {
  placedBlock.set(from.ints);
  placed.batchKg.set(from.batchKg);
  placed.batchBags.set(from.batchBags);
};

/** Decodes a dispatch and keeps its trajectory, in the arrays of an old one where there is one. The plan is left in `state`. */
export const trajectoryOf = (state: DecoderState, dispatch: Dispatch, old?: Trajectory): Trajectory => {
  const snapshots = old?.snapshots ?? [];
  beginPlan(state, dispatch);
  const queueBlock = state.queueBlock.slice();
  const shifts = workShifts(state, dispatch, 0, (shift) => {
    snapshots[shift] = takeSnapshot(state, snapshots[shift]);
    return false;
  });
  snapshots[shifts] = takeSnapshot(state, snapshots[shifts]);
  const isWhole = !repairEnd(state, dispatch);
  return { snapshots, shifts, placed: copyOfPlaced(state), queueBlock, isWhole };
};

/** A plan that differs from a trajectory from one shift on: where it ended, or where it came back to what the trajectory has. */
export interface Branch {
  first: number;
  until: number;
  hasJoined: boolean;
  snapshots: (Snapshot | undefined)[];
  isWhole: boolean;
}

const beginBranch = (state: DecoderState, dispatch: Dispatch, trajectory: Trajectory, first: number): void => {
  state.dispatch = dispatch;
  state.pourUntil = NEVER;
  takeHolds(state, dispatch);
  state.queueBlock.set(trajectory.queueBlock);
  restorePlaced(state, trajectory.placed);
  restoreSnapshot(state, trajectory.snapshots[first]!);
};

/** Pours of the branch that are stripped after it came back to the trajectory are stripped as they are there. */
const takeStrips = ({ placedBlock, placed }: DecoderState, trajectory: Trajectory): void => {
  const [strips, ready] = [placed.pourStripStart, placed.pourReadyAt].map((array) =>
    trajectory.placed.ints.subarray((array.byteOffset - placedBlock.byteOffset) / placedBlock.BYTES_PER_ELEMENT),
  ) as [Int32Array, Int32Array];
  for (let p = 0; p < placed.pours; p++) {
    if (placed.pourStripStart[p] !== NONE) continue;
    placed.pourStripStart[p] = strips[p]!;
    placed.pourReadyAt[p] = ready[p]!;
  }
};

/**
 * Decodes a dispatch that differs from that of a whole trajectory only in its choices in shift `first`, and leaves the plan in
 * `state`: what lies before is taken from the trajectory, and as soon as everything stands as it did there, so is what comes
 * after. `spare` are snapshots that may be written over.
 */
export const branchOff = (
  state: DecoderState,
  dispatch: Dispatch,
  trajectory: Trajectory,
  first: number,
  spare: (Snapshot | undefined)[],
): Branch => {
  beginBranch(state, dispatch, trajectory, first);
  let hasJoined = false;
  const until = workShifts(state, dispatch, first, (shift) => {
    if (shift === first) return false;
    spare[shift] = takeSnapshot(state, spare[shift]);
    hasJoined = shift < trajectory.shifts && isSameState(spare[shift], trajectory.snapshots[shift]!);
    return hasJoined;
  });
  const branch = { first, until, hasJoined, snapshots: spare };
  if (hasJoined) {
    takeStrips(state, trajectory);
    restoreSnapshot(state, trajectory.snapshots[trajectory.shifts]!);
    return { ...branch, isWhole: true };
  }
  spare[until] = takeSnapshot(state, spare[until]);
  return { ...branch, isWhole: !repairEnd(state, dispatch) };
};

/** Makes a whole branch, just decoded into `state`, the trajectory. */
export const followBranch = (state: DecoderState, trajectory: Trajectory, branch: Branch): void => {
  const last = branch.hasJoined ? branch.until - 1 : branch.until;
  for (let s = branch.first + 1; s <= last; s++) {
    // Exchanged, never shared: the next branch writes over what this one leaves behind.
    const mine = trajectory.snapshots[s];
    trajectory.snapshots[s] = branch.snapshots[s]!;
    branch.snapshots[s] = mine;
  }
  if (!branch.hasJoined) trajectory.shifts = branch.until;
  trajectory.placed = copyOfPlaced(state);
};
