import { eq } from 'drizzle-orm';
import { acts } from '../tables/change.ts';
import type { Tx } from '../transaction.ts';

/** Keeps which change a form with this key made. Throws where the key is taken, so that nothing is done twice. */
export const addAct = async (tx: Tx, key: string, change: number): Promise<void> => {
  await tx.insert(acts).values({ key, change });
};

/** The change that a form with this key made, be it undone since or not; null where it made none. */
export const changeOfAct = async (tx: Tx, key: string): Promise<number | null> =>
  (await tx.select({ change: acts.change }).from(acts).where(eq(acts.key, key)))[0]?.change ?? null;
