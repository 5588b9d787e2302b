import { eq } from 'drizzle-orm';
import { mixWetCures } from '../tables/mix-wet-cure.ts';
import type { Tx } from '../transaction.ts';

/** Hours for which pieces are kept wet once they are stripped, by mix; mixes of which nobody said so are left out. */
export const wetCuresOfMixes = async (tx: Tx): Promise<ReadonlyMap<string, number>> =>
  new Map((await tx.select().from(mixWetCures)).map(({ mix, hours }) => [mix, hours]));

/** Sets these hours of a mix, and the minutes of a session that keeping wet takes; 0 hours: not kept wet, 0 minutes: not planned. */
export const setMixWetCure = async (tx: Tx, mix: string, hours: number, minutes: number): Promise<void> => {
  await tx.delete(mixWetCures).where(eq(mixWetCures.mix, mix));
  if (hours > 0) await tx.insert(mixWetCures).values({ mix, hours, minutes });
};
