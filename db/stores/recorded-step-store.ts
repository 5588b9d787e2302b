import { desc, eq } from 'drizzle-orm';
import { recordedSteps } from '../tables/change.ts';
import type { Tx } from '../transaction.ts';

/** Keeps with a change which steps it recorded, each by the name it had on the page. Undoing it takes them back. */
export const addRecordedSteps = async (tx: Tx, change: number, steps: readonly string[]): Promise<void> => {
  for (const step of new Set(steps)) await tx.insert(recordedSteps).values({ step, change });
};

/** The last change that recorded a step and was not undone; null for none. */
export const changeOfStep = async (tx: Tx, step: string): Promise<number | null> =>
  (
    await tx
      .select({ change: recordedSteps.change })
      .from(recordedSteps)
      .where(eq(recordedSteps.step, step))
      .orderBy(desc(recordedSteps.change))
      .limit(1)
  )[0]?.change ?? null;

/** A step may be recorded again: what it did was taken apart. */
export const forgetStep = async (tx: Tx, step: string): Promise<void> => {
  await tx.delete(recordedSteps).where(eq(recordedSteps.step, step));
};
