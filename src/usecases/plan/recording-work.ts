import type { Tx } from '../../../db/open.ts';
import { writeEntries } from '../../../db/stores/book-store.ts';
import { standingPieces } from '../../../db/stores/finished-store.ts';
import { deliveriesForMixes } from '../../../db/stores/material-store.ts';
import { addRecordedSteps, type RecordedStep } from '../../../db/stores/recorded-step-store.ts';
import { addWorkRecords } from '../../../db/stores/work-record-store.ts';
import type { Fault } from '../../../shared/fault.ts';
import type { PlanOfWork } from '../../../shared/late-work.ts';
import type { PlanFile } from '../../../shared/plan.ts';
import type { WorkRecord } from '../../../shared/work-record.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import type { Deliveries } from '../../engine/book/bag-dates.ts';
import { record, type UnderBook } from '../../engine/book/carry-on.ts';
import type { Booked, Entry } from '../../engine/book/entry.ts';
import { type MarkedPiece, packedRecords, piecesTaken, type Standing } from '../../engine/book/pieces-taken.ts';
import type { FromFinished, WorkDone } from '../../engine/book/work-done.ts';
import { type BagsKnown, recordsOfWork } from '../../engine/book/work-records.ts';
import { done, type Outcome, refuse, type UseCaseContext } from '../core/context.ts';
import { type Changed, type ChangeWords, changing } from './changing.ts';
import { lessAnswered } from './late-answered.ts';
import { NO_WORK } from './late-work.ts';
import { takeConsumables } from './take-consumables.ts';

/** One thing that was done. */
export interface WorkStep {
  /** Where it is said why it cannot have been done; left out, at the field the reason belongs to. */
  nameOf?: (fault: Fault) => string;
  /** The step of late work that it was, by name; left out, what goes with it best. */
  answers?: string | undefined;
  /** Seen with the yard and the plan as they stand once all before it is recorded. */
  work: (under: UnderBook) => Outcome<WorkDone>;
}

/** What is recorded, and what the change is about. */
export interface Recording<T> {
  steps: readonly WorkStep[];
  value: T;
  /** By which these steps are found when they are recorded a second time. */
  named?: readonly RecordedStep[];
}

/** What steps that are recorded one after another come to, and what is left to be done and to be answered. */
interface Recorded {
  entries: Entry[];
  records: WorkRecord[];
  after: UnderBook;
  workLeft: PlanOfWork;
}

const refusedAt = ({ nameOf }: WorkStep, refused: { ok: false; faults: Fault[] }): Outcome<never> => {
  const [first] = refused.faults;
  return nameOf && first ? refuse(nameOf(first), first.message) : refused;
};

/** What only the store knows and goes into the record: the marks of finished pieces at their places, and what came when. */
interface InStore {
  stood: readonly Standing[];
  deliveries: Deliveries;
}

const inStore = async (tx: Tx, yard: YardFile): Promise<InStore> => ({
  stood: await standingPieces(tx),
  deliveries: await deliveriesForMixes(tx, yard),
});

const recordsOf = (work: WorkDone, yard: YardFile, taken: readonly MarkedPiece[], known: BagsKnown): WorkRecord[] =>
  work.kind === 'packed' ? packedRecords({ ...work, at: work.doneAt }, yard, taken) : recordsOfWork(work, yard, known);

/** Records steps one after another; when one of them cannot have been done, none is. */
const recordSteps = (
  start: UnderBook,
  work: PlanOfWork,
  steps: readonly WorkStep[],
  { stood, deliveries }: InStore,
): Outcome<Recorded> => {
  const entries: Entry[] = [];
  const records: WorkRecord[] = [];
  let [after, workLeft, standing] = [start, work, stood];
  for (const step of steps) {
    const doing = step.work(after);
    const recorded = doing.ok ? record(after, doing.value) : doing;
    if (doing.ok) workLeft = lessAnswered(after.yard, workLeft, doing.value, step.answers);
    if (!recorded.ok) return refusedAt(step, recorded);
    const taken = piecesTaken(standing, recorded.entries);
    if (doing.ok)
      records.push(...recordsOf(doing.value, after.yard, taken.marked, { entries: recorded.entries, deliveries }));
    standing = taken.standing;
    entries.push(...recorded.entries);
    after = recorded.after;
  }
  return done({ entries, records, after, workLeft });
};

/** The pieces in the yard that a plan gives an order. */
export const plannedFor = (plan: PlanFile | null, order: string): readonly FromFinished[] =>
  plan?.orders.find(({ id }) => id === order)?.fromFinished ?? [];

/**
 * Work done in the yard is recorded as one change: what it comes to in the book is written, and the plan goes on less that
 * work where it was done as planned.
 */
export const recordingWork = <T>(
  context: UseCaseContext,
  what: ChangeWords<T>,
  told: (tx: Tx, yard: YardFile, plan: PlanFile, work: PlanOfWork) => Promise<Outcome<Recording<T>>>,
): Promise<Outcome<Changed<T>>> => {
  let left: PlanFile | null = null;
  let workLeft = NO_WORK;
  return changing<T>(
    context,
    what,
    async (tx, yard, change, plan, work) => {
      const recording = await told(tx, yard, plan, work);
      if (!recording.ok) return recording;
      const recorded = recordSteps({ yard, plan }, work, recording.value.steps, await inStore(tx, yard));
      if (!recorded.ok) return recorded;
      await writeEntries(tx, recorded.value.entries);
      await addWorkRecords(tx, recorded.value.records, context.by);
      await takeConsumables(tx, recorded.value.records);
      await addRecordedSteps(tx, change, recording.value.named ?? []);
      left = recorded.value.after.plan;
      workLeft = recorded.value.workLeft;
      return done(recording.value.value);
    },
    { carryOn: () => left, workLeft: () => workLeft },
  );
};

/** Entries of the book as part of a change that the plan has to be made anew for; or why there are none. */
export const writeBooked = async (tx: Tx, booked: Booked): Promise<Outcome<null>> => {
  if (!booked.ok) return booked;
  await writeEntries(tx, booked.entries);
  return done(null);
};
