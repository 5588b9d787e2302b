import { changeById } from '../../../db/stores/change-store.ts';
import { type RecordedStep, recordingOf, type StepSaid } from '../../../db/stores/recorded-step-store.ts';
import { minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import type { WorkDone } from '../../engine/book/work-done.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import { done, type Outcome, refuse, today, type UseCaseContext } from '../core/context.ts';
import { atWords } from '../core/day-words.ts';
import { writtenAt } from '../core/written-at.ts';
import type { Changed } from './changing.ts';
import { currentPlan } from './make-plan.ts';
import { workDoneAt, workSaid } from './work-said.ts';

/** Something that is recorded once only: by which names it is found again, and what a form says of it. */
export interface Once {
  /** One for each mould of a batch. */
  names: readonly string[];
  /** What it says was done, at whatever time; left out, nothing that could be otherwise. */
  work?: WorkDone;
  /** When it was, as `writtenAt` has it. Just now (null) contradicts no time. */
  at?: string | null | undefined;
  /** Where a refusal stands. */
  field: string;
}

/** What is kept of work that is recorded, under each of its names. */
export const recordedSteps = (names: readonly string[], work: WorkDone, yard: YardFile): RecordedStep[] => {
  const said = { what: workSaid(work, yard), minute: minuteOf(workDoneAt(work)) };
  return names.map((step) => ({ step, said }));
};

/** "Already recorded at 9:12: 2 pieces from 1 bag, in 900 no. 1 and 900 no. 2." */
const alreadyText = ({ what, minute }: StepSaid, yard: YardFile, now: string): string => {
  const instant = calendarOf(yard.yard.timeZone).instantText(minute);
  const when = atWords(instant, today(yard.yard.timeZone, now));
  return `Already recorded${when}: ${what}. Nothing was changed. To record it otherwise, undo that first.`;
};

/** Whether a form says of a step what was said when it was recorded. */
const saysTheSame = ({ work, at }: Once, first: StepSaid, yard: YardFile, now: string): boolean => {
  if (work && workSaid(work, yard) !== first.what) return false;
  const minute = at ? writtenAt(at, { now, yard }) : null;
  return minute === null || (minute.ok && minuteOf(minute.value) === first.minute);
};

/**
 * The change that recorded a step already, as if it had just been done; refused where it was recorded otherwise than it is
 * told now. Null where nobody recorded it, or that was undone.
 */
const alreadyRecorded = async (context: UseCaseContext, once: Once): Promise<Outcome<Changed<null>> | null> => {
  const found = await context.database.read(async (tx) => {
    const recording = await recordingOf(tx, once.names);
    const change = recording && (await changeById(tx, recording.change));
    return change && { change, said: recording.said };
  });
  if (!found) return null;
  const { plan, yard, cached } = await currentPlan(context);
  const { change, said } = found;
  if (said && !saysTheSame(once, said, yard, context.now))
    return refuse(once.field, alreadyText(said, yard, context.now));
  return done({ value: null, change: change.id, words: change.words, moved: [], plan, yard, cached });
};

type Recording<T> = () => Promise<Outcome<Changed<T>>>;

/** Records what cannot have been, unless that is because it is recorded already: then that is what came of it. */
export const orRecorded = async <T>(
  context: UseCaseContext,
  once: Once,
  record: Recording<T>,
): Promise<Outcome<Changed<T | null>>> => {
  const outcome = await record();
  return outcome.ok ? outcome : ((await alreadyRecorded(context, once)) ?? outcome);
};

/**
 * Records a step that is done once only: the second tap on its button, or one in another tab, finds the change of the
 * first and changes nothing. One that says it otherwise is refused, and told what is recorded.
 */
export const recordedOnce = async <T>(
  context: UseCaseContext,
  once: Once,
  record: Recording<T>,
): Promise<Outcome<Changed<T | null>>> => (await alreadyRecorded(context, once)) ?? orRecorded(context, once, record);
