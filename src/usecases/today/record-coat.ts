import { done, type Outcome, type UseCaseContext } from '../core/context.ts';
import { writtenAt } from '../core/written-at.ts';
import type { Changed } from '../plan/changing.ts';
import { recordedOnce } from '../plan/recorded-once.ts';
import { recordingWork } from '../plan/recording-work.ts';

export interface CoatRecord {
  mould: string;
  /** When, as an instant; just now where it is left out. */
  at?: string | null;
  /** The name of the step on the page. */
  step?: string | null;
}

/** A mould is clean and has its sealing coat: from then on it dries, and is set up after that. */
export const recordCoat = (context: UseCaseContext, coat: CoatRecord): Promise<Outcome<Changed<null>>> => {
  const { mould, at, step } = coat;
  return recordedOnce(context, step, () =>
    recordingWork<null>(context, { kind: 'coated', words: `${mould} is coated, and dries` }, async (_tx, yard) => {
      const doneAt = writtenAt(at, { now: context.now, yard });
      if (!doneAt.ok) return doneAt;
      const work = { kind: 'coated' as const, mould, doneAt: doneAt.value };
      return done({ steps: [{ work: () => done(work) }], value: null, named: [step] });
    }),
  );
};
