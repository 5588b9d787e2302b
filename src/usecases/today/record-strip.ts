import type { Doubt } from '../../../shared/doubt.ts';
import type { CameOut } from '../../../shared/piece-to-mend.ts';
import { minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { curingTimesOf, pieceMayBeStripped } from '../../engine/book/curing-times.ts';
import { done, type Outcome, type UseCaseContext } from '../core/context.ts';
import { writtenAt } from '../core/written-at.ts';
import type { Changed } from '../plan/changing.ts';
import { asked, durationText } from '../plan/doubts.ts';
import { recordedOnce, recordedSteps } from '../plan/recorded-once.ts';
import { recordingWork } from '../plan/recording-work.ts';
import { strippedWords } from '../plan/work-said.ts';

export interface StripRecord {
  mould: string;
  cameOut: CameOut;
  /** What is wrong with a piece that is not good, in a few words; empty where nobody said. */
  reason: string;
  /** When, as `writtenAt` has it. */
  at?: string | null;
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

/**
 * A piece is out of its mould, and the mould is dirty. A good piece cures on until it is fit to go out by the plan's
 * temperatures. One to mend counts for nothing until it is mended, one that is scrapped is gone: where an order needs it,
 * another is planned.
 */
export const recordStrip = (context: UseCaseContext, record: StripRecord): Promise<Outcome<Changed<null>>> => {
  const { mould, cameOut, reason, at, step, sure = [] } = record;
  const names = step ? [step] : [];
  const work = (doneAt: string) => ({ kind: 'stripped' as const, mould, cameOut, reason, doneAt });
  return recordedOnce(context, { names, work: work(context.now), at, field: 'mould' }, () =>
    recordingWork<null>(context, { kind: 'stripped', words: strippedWords(record) }, async (_tx, yard) => {
      const doneAt = writtenAt(at, { now: context.now, yard });
      if (!doneAt.ok) return doneAt;
      const early = asked('early', sure, cameOut === 'good' ? earlyQuestion(yard, mould, doneAt.value) : null);
      if (!early.ok) return early;
      const stripped = work(doneAt.value);
      return done({
        steps: [{ work: () => done(stripped) }],
        value: null,
        named: recordedSteps(names, stripped, yard),
      });
    }),
  );
};
