import { beginPlan, repairEnd, workShifts } from './decode.ts';
import type { Placed, Placing } from './decoder-state.ts';
import type { Dispatch } from './dispatch.ts';
import { NEVER, NONE } from './problem.ts';
import { isSameState, restoreSnapshot, type Snapshot, takeSnapshot } from './snapshot.ts';

/** How a plan came about, to branch off from it at any shift. */
export interface Course {
  /** What was known at the start of each shift worked, and at the end. */
  snapshots: Snapshot[];
  shifts: number;
  record: Record;
  /** What the dispatch's sequence settled before the first shift. */
  queues: Int32Array;
  /** False for a plan that had to be begun again for want of time to strip: nothing can branch off from it. */
  isWhole: boolean;
}

/** What was placed, apart from the placing that it was placed in. */
interface Record {
  ints: Int32Array;
  batchKg: Float64Array;
  batchBags: Float64Array;
  fromFinished: Placed['fromFinished'];
}

const recordOf = ({ record, placed }: Placing): Record => ({
  ints: record.slice(),
  batchKg: placed.batchKg.slice(),
  batchBags: placed.batchBags.slice(),
  fromFinished: [...placed.fromFinished],
});

/** Puts what was placed in a plan back; its counts are in the snapshots. */
const putBack = ({ record, placed }: Placing, from: Record): void => {
  record.set(from.ints);
  placed.batchKg.set(from.batchKg);
  placed.batchBags.set(from.batchBags);
  placed.fromFinished = from.fromFinished;
};

/** Decodes a dispatch and keeps its course, in the arrays of an old one where there is one. The plan is left in `at`. */
export const courseOf = (at: Placing, dispatch: Dispatch, old?: Course): Course => {
  const snapshots = old?.snapshots ?? [];
  beginPlan(at, dispatch);
  const queues = at.queues.slice();
  const shifts = workShifts(at, dispatch, 0, (shift) => {
    snapshots[shift] = takeSnapshot(at, snapshots[shift]);
    return false;
  });
  snapshots[shifts] = takeSnapshot(at, snapshots[shifts]);
  const isWhole = !repairEnd(at, dispatch);
  return { snapshots, shifts, record: recordOf(at), queues, isWhole };
};

/** A plan that differs from a course from one shift on: where it ended, or where it came back to what the course has. */
export interface Branch {
  first: number;
  until: number;
  hasJoined: boolean;
  snapshots: (Snapshot | undefined)[];
  isWhole: boolean;
}

const beginBranch = (at: Placing, dispatch: Dispatch, course: Course, first: number): void => {
  at.dispatch = dispatch;
  at.pourUntil = NEVER;
  at.queues.set(course.queues);
  putBack(at, course.record);
  restoreSnapshot(at, course.snapshots[first]!);
};

/** Pours of the branch that are stripped after it came back to the course are stripped as they are there. */
const takeStrips = ({ record, placed }: Placing, course: Course): void => {
  const [strips, ready] = [placed.pourStripStart, placed.pourReadyAt].map((array) =>
    course.record.ints.subarray((array.byteOffset - record.byteOffset) / record.BYTES_PER_ELEMENT),
  ) as [Int32Array, Int32Array];
  for (let p = 0; p < placed.pours; p++) {
    if (placed.pourStripStart[p] !== NONE) continue;
    placed.pourStripStart[p] = strips[p]!;
    placed.pourReadyAt[p] = ready[p]!;
  }
};

/**
 * Decodes a dispatch that differs from that of a whole course only in its choices in shift `first`, and leaves the plan in
 * `at`: what lies before is taken from the course, and as soon as everything stands as it did there, so is what comes
 * after. `spare` are snapshots that may be written over.
 */
export const branchOff = (
  at: Placing,
  dispatch: Dispatch,
  course: Course,
  first: number,
  spare: (Snapshot | undefined)[],
): Branch => {
  beginBranch(at, dispatch, course, first);
  let hasJoined = false;
  const until = workShifts(at, dispatch, first, (shift) => {
    if (shift === first) return false;
    spare[shift] = takeSnapshot(at, spare[shift]);
    hasJoined = shift < course.shifts && isSameState(spare[shift], course.snapshots[shift]!);
    return hasJoined;
  });
  const branch = { first, until, hasJoined, snapshots: spare };
  if (hasJoined) {
    takeStrips(at, course);
    restoreSnapshot(at, course.snapshots[course.shifts]!);
    return { ...branch, isWhole: true };
  }
  spare[until] = takeSnapshot(at, spare[until]);
  return { ...branch, isWhole: !repairEnd(at, dispatch) };
};

/** Makes a whole branch, just decoded into `at`, the course. */
export const follow = (at: Placing, course: Course, branch: Branch): void => {
  const last = branch.hasJoined ? branch.until - 1 : branch.until;
  for (let s = branch.first + 1; s <= last; s++) {
    // Exchanged, never shared: the next branch writes over what this one leaves behind.
    const mine = course.snapshots[s];
    course.snapshots[s] = branch.snapshots[s]!;
    branch.snapshots[s] = mine;
  }
  if (!branch.hasJoined) course.shifts = branch.until;
  course.record = recordOf(at);
};
