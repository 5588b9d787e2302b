import type { Tx } from '../../../db/open.ts';
import type { Doubt } from '../../../shared/doubt.ts';
import type { PlanOfWork } from '../../../shared/late-work.ts';
import type { CameOut } from '../../../shared/piece-to-mend.ts';
import { minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { curingTimesOf, pieceMayBeStripped } from '../../engine/book/curing-times.ts';
import { done, type Outcome, today, type UseCaseContext } from '../core/context.ts';
import { earlierWords } from '../core/day-words.ts';
import { writtenAt } from '../core/written-at.ts';
import type { Changed } from '../plan/changing.ts';
import { asked, durationText } from '../plan/doubts.ts';
import { farOffQuestion, WEEK } from '../plan/far-off.ts';
import { recordedOnce, recordedSteps } from '../plan/recorded-once.ts';
import { recordingWork } from '../plan/recording-work.ts';
import { strippedWords } from '../plan/work-said.ts';
import { timedWork } from './timed-work.ts';

export interface StripRecord {
  mould: string;
  cameOut: CameOut;
  /** What is wrong with a piece that is not good, in a few words; empty where nobody said. */
  reason: string;
  /** When, as `writtenAt` has it. */
  at?: string | null;
  /** It was tapped as it was done. */
  tapped?: boolean;
  /** The name of the step on the page. */
  step?: string | null;
  /** What the maker was asked about, and is sure of. */
  sure?: readonly Doubt[];
}

/** A strip so little before its time is none that anybody asks about. */
const EARLY_MINUTES = 15;

/** A strip long before its time is asked about; null where it is not. What the mould holds is the book's to say. */
const earlyQuestion = (yard: YardFile, mould: string, doneAt: string): string | null => {
  const piece = yard.inMould.find((one) => one.mould === mould);
  const [from, at] = [piece ? pieceMayBeStripped(piece, curingTimesOf(yard)) : 0, minuteOf(doneAt)];
  if (from - at <= EARLY_MINUTES || at < minuteOf(piece!.filledAt)) return null;
  return `That is ${durationText(from - at)} before it has set, by the plan's temperatures. Is it out of its mould, and good?`;
};

/** A strip told of a day far off is asked about: the plan has it for another one. */
const farOff = (tx: Tx, yard: YardFile, work: PlanOfWork, { mould, doneAt }: { mould: string; doneAt: string }) => {
  const strip = work.strips.find((one) => one.mould === mould);
  const plannedAt = strip ? minuteOf(strip.stripStart) : null;
  return farOffQuestion(tx, yard, { at: minuteOf(doneAt), plannedAt, earliest: (plannedAt ?? 0) - WEEK });
};

/** What is asked first: was it done that day, was it set by then? */
const questions = async (tx: Tx, yard: YardFile, toDo: PlanOfWork, record: StripRecord, doneAt: string) => {
  const { mould, cameOut, at, sure = [] } = record;
  const far = asked('day', sure, at ? await farOff(tx, yard, toDo, { mould, doneAt }) : null);
  if (!far.ok || cameOut !== 'good') return far;
  return asked('early', sure, earlyQuestion(yard, mould, doneAt));
};

/**
 * A piece is out of its mould, and the mould is dirty. A good piece cures on until it is fit to go out by the plan's
 * temperatures. One to mend counts for nothing until it is mended, one that is scrapped is gone: where an order needs it,
 * another is planned.
 */
export const recordStrip = (context: UseCaseContext, record: StripRecord): Promise<Outcome<Changed<string | null>>> => {
  const { mould, cameOut, reason, at, step, tapped = false } = record;
  const names = step ? [step] : [];
  const work = (doneAt: string) => ({ kind: 'stripped' as const, mould, cameOut, reason, doneAt });
  const what = { kind: 'stripped', words: (when: string) => strippedWords(record, when) };
  return recordedOnce(context, { names, work: work(context.now), at, field: 'mould' }, () =>
    recordingWork<string>(context, what, async (tx, yard, _plan, toDo) => {
      const doneAt = writtenAt(at, { now: context.now, yard });
      if (!doneAt.ok) return doneAt;
      const sure = await questions(tx, yard, toDo, record, doneAt.value);
      if (!sure.ok) return sure;
      const timed = tapped ? await timedWork(tx, yard, toDo, { kind: 'strip', mould }, doneAt.value) : null;
      const stripped = { ...work(doneAt.value), ...(timed ? { timed } : {}) };
      const steps = [{ work: () => done(stripped) }];
      const when = earlierWords(doneAt.value, today(yard.yard.timeZone, context.now));
      return done({ steps, value: when, named: recordedSteps(names, stripped, yard) });
    }),
  );
};
