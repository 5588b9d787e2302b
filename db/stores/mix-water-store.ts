import { eq } from 'drizzle-orm';
import { mixWaters } from '../tables/mix-water.ts';
import type { Tx } from '../transaction.ts';

/** Litres to a bag by mix, of the mixes of which an amount was said. */
export const watersOfMixes = async (tx: Tx): Promise<ReadonlyMap<string, number>> =>
  new Map((await tx.select().from(mixWaters)).map(({ mix, litresPerBag }) => [mix, litresPerBag]));

/** Sets the litres of water to a bag of a mix; null: not said. */
export const setMixWater = async (tx: Tx, mix: string, litresPerBag: number | null): Promise<void> => {
  await tx.delete(mixWaters).where(eq(mixWaters.mix, mix));
  if (litresPerBag !== null) await tx.insert(mixWaters).values({ mix, litresPerBag });
};
