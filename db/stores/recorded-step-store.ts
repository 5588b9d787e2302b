import { desc, inArray, like } from 'drizzle-orm';
import { recordedSteps, type StepSaid } from '../tables/change.ts';
import type { Tx } from '../transaction.ts';

export type { StepSaid } from '../tables/change.ts';

/** A step by the name it had on the page, and what was said of it. */
export interface RecordedStep {
  step: string;
  said: StepSaid;
}

/** Keeps with a change which steps it recorded. Undoing it takes them back. */
export const addRecordedSteps = async (tx: Tx, change: number, steps: readonly RecordedStep[]): Promise<void> => {
  const byName = new Map(steps.map(({ step, said }) => [step, said]));
  for (const [step, said] of byName) await tx.insert(recordedSteps).values({ step, change, said });
};

/** The last change that recorded one of some steps and was not undone, with what was said of it; null for none. */
export const recordingOf = async (
  tx: Tx,
  steps: readonly string[],
): Promise<{ change: number; said: StepSaid | null } | null> =>
  (
    await tx
      .select({ change: recordedSteps.change, said: recordedSteps.said })
      .from(recordedSteps)
      .where(inArray(recordedSteps.step, [...steps]))
      .orderBy(desc(recordedSteps.change))
      .limit(1)
  )[0] ?? null;

/** When each of some steps was done, in minutes since 1970; those that nobody recorded are left out. */
export const minutesOfSteps = async (tx: Tx, steps: readonly string[]): Promise<ReadonlyMap<string, number>> => {
  const rows = await tx
    .select({ step: recordedSteps.step, said: recordedSteps.said })
    .from(recordedSteps)
    .where(inArray(recordedSteps.step, [...steps]));
  return new Map(rows.flatMap(({ step, said }) => (said ? [[step, said.minute] as const] : [])));
};

/** Steps may be recorded again: what they did was taken apart. `%` stands for any letters in a name. */
export const forgetSteps = async (tx: Tx, names: readonly string[]): Promise<void> => {
  for (const name of names) await tx.delete(recordedSteps).where(like(recordedSteps.step, name));
};
