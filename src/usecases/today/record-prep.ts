import { done, type Outcome, type UseCaseContext } from '../core/context.ts';
import { writtenAt } from '../core/written-at.ts';
import type { Changed } from '../plan/changing.ts';
import { recordedOnce, recordedSteps } from '../plan/recorded-once.ts';
import { recordingWork } from '../plan/recording-work.ts';

export interface PrepRecord {
  mould: string;
  casting: string;
  /** It got its sealing coat. */
  sealed: boolean;
  /** When, as an instant; just now where it is left out. */
  at?: string | null;
  /** The name of the step on the page. */
  step?: string | null;
}

/** A mould is clean, set up for a piece (and sealed, where that was due): nothing is left to do before the pour. */
export const recordPrep = (context: UseCaseContext, prep: PrepRecord): Promise<Outcome<Changed<null>>> => {
  const { mould, casting, sealed: coated, at, step } = prep;
  const names = step ? [step] : [];
  const work = (doneAt: string) => ({ kind: 'set up' as const, mould, casting, coated, doneAt });
  return recordedOnce(context, { names, work: work(context.now), at, field: 'mould' }, () =>
    recordingWork<null>(context, { kind: 'prepared', words: `${mould} is ready to pour` }, async (_tx, yard) => {
      const doneAt = writtenAt(at, { now: context.now, yard });
      if (!doneAt.ok) return doneAt;
      const ready = work(doneAt.value);
      return done({ steps: [{ work: () => done(ready) }], value: null, named: recordedSteps(names, ready, yard) });
    }),
  );
};
