import type { PlanFile } from '../../../shared/plan.ts';
import { minuteOf } from '../../../shared/time.ts';
import { done, type Outcome, type UseCaseContext } from '../core/context.ts';
import { writtenAt } from '../core/written-at.ts';
import type { Changed } from '../plan/changing.ts';
import { recordedOnce, recordedSteps } from '../plan/recorded-once.ts';
import { recordingWork } from '../plan/recording-work.ts';
import { fullUntil } from './full-until.ts';
import { TAP_MINUTES } from './record-pour.ts';

export interface CoatRecord {
  mould: string;
  /** When, as an instant; just now where it is left out. */
  at?: string | null;
  /** The name of the step on the page. */
  step?: string | null;
}

/** When a coat that was tapped just now was on: as planned, if the tap came with the end of it. It dries from then on. */
const tappedAt = (mould: string, now: string, { coats }: PlanFile): string => {
  const minute = minuteOf(now);
  const planned = coats.find(
    (coat) => coat.mould === mould && minuteOf(coat.end) <= minute && minute <= minuteOf(coat.end) + TAP_MINUTES,
  );
  return planned?.end ?? now;
};

/** A mould is clean and has its sealing coat: from then on it dries, and is set up after that. */
export const recordCoat = (context: UseCaseContext, coat: CoatRecord): Promise<Outcome<Changed<null>>> => {
  const { mould, at, step } = coat;
  const names = step ? [step] : [];
  const work = (doneAt: string) => ({ kind: 'coated' as const, mould, doneAt });
  return recordedOnce(context, { names, work: work(context.now), at, field: 'mould' }, () =>
    recordingWork<null>(context, { kind: 'coated', words: `${mould} is coated, and dries` }, async (tx, yard, plan) => {
      const doneAt = writtenAt(at ?? tappedAt(mould, context.now, plan), { now: context.now, yard });
      if (!doneAt.ok) return doneAt;
      const wasFull = await fullUntil(tx, mould, doneAt.value, yard);
      if (!wasFull.ok) return wasFull;
      const coated = work(doneAt.value);
      return done({ steps: [{ work: () => done(coated) }], value: null, named: recordedSteps(names, coated, yard) });
    }),
  );
};
