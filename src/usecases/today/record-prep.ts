import type { PlanOfWork } from '../../../shared/late-work.ts';
import { minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { done, type Outcome, today, type UseCaseContext } from '../core/context.ts';
import { atWords } from '../core/day-words.ts';
import { writtenAt } from '../core/written-at.ts';
import type { Changed } from '../plan/changing.ts';
import { recordedOnce, recordedSteps } from '../plan/recorded-once.ts';
import { recordingWork } from '../plan/recording-work.ts';
import { fullUntil } from './full-until.ts';
import { TAP_MINUTES } from './record-pour.ts';
import { timedWork } from './timed-work.ts';

export interface PrepRecord {
  mould: string;
  casting: string;
  /** It got its sealing coat. */
  sealed: boolean;
  /** When, as an instant; just now where it is left out. */
  at?: string | null;
  /** It was tapped as it was done. */
  tapped?: boolean;
  /** The name of the step on the page. */
  step?: string | null;
}

/**
 * When a mould that was tapped just now was ready: as planned, if the tap came with the end of its set-up, or after its
 * batch was to be begun. When else it was, is told by its time.
 */
const tappedAt = ({ mould, casting }: PrepRecord, now: string, work: PlanOfWork): string => {
  const minute = minuteOf(now);
  const [next] = work.pours
    .filter((pour) => pour.mould === mould && pour.prepStart !== pour.prepEnd)
    .sort((a, b) => minuteOf(a.prepStart) - minuteOf(b.prepStart));
  if (next?.casting !== casting || minute < minuteOf(next.prepEnd)) return now;
  const begins = minuteOf(work.batches.find(({ id }) => id === next.batch)?.start ?? now);
  return minute <= minuteOf(next.prepEnd) + TAP_MINUTES || begins < minute ? next.prepEnd : now;
};

/** Whether setting it up is what it is every turn: it is to be cleaned first, and no other piece was made in it before. */
const isToClean = ({ moulds }: YardFile, id: string, casting: string): boolean =>
  moulds.some((mould) => mould.id === id && mould.condition === 'dirty' && mould.setFor === casting);

/** A mould is clean, set up for a piece (and sealed, where that was due): nothing is left to do before the pour. */
export const recordPrep = (context: UseCaseContext, prep: PrepRecord): Promise<Outcome<Changed<string | null>>> => {
  const { mould, casting, sealed: coated, at, step, tapped = false } = prep;
  const names = step ? [step] : [];
  const work = (doneAt: string) => ({ kind: 'set up' as const, mould, casting, coated, doneAt });
  return recordedOnce(context, { names, work: work(context.now), at, field: 'mould' }, () =>
    recordingWork<string>(
      context,
      { kind: 'prepared', words: (when) => `${mould} is ready to pour${when}` },
      async (tx, yard, _plan, toDo) => {
        const doneAt = writtenAt(at ?? tappedAt(prep, context.now, toDo), { now: context.now, yard });
        if (!doneAt.ok) return doneAt;
        const wasFull = await fullUntil(tx, mould, doneAt.value, yard);
        if (!wasFull.ok) return wasFull;
        const isWhole = tapped && !coated && isToClean(yard, mould, casting);
        const timed = isWhole ? await timedWork(tx, yard, toDo, { kind: 'prep', mould }, at ?? context.now) : null;
        const ready = { ...work(doneAt.value), ...(timed ? { timed } : {}) };
        const when = at ? atWords(doneAt.value, today(yard.yard.timeZone, context.now)) : '';
        return done({ steps: [{ work: () => done(ready) }], value: when, named: recordedSteps(names, ready, yard) });
      },
    ),
  );
};
