import { eq } from 'drizzle-orm';
import { mixWetCures } from '../tables/mix-wet-cure.ts';
import type { Tx } from '../transaction.ts';

/** For how many hours pieces are kept wet once they are stripped, and how many minutes of a session that takes (0: not planned), by mix. */
export const wetCures = async (tx: Tx): Promise<ReadonlyMap<string, { hours: number; minutes: number }>> =>
  new Map((await tx.select().from(mixWetCures)).map(({ mix, ...cure }) => [mix, cure]));

/** The hours alone; mixes of which nobody said so are left out. */
export const wetCuresOfMixes = async (tx: Tx): Promise<ReadonlyMap<string, number>> =>
  new Map([...(await wetCures(tx))].map(([mix, { hours }]) => [mix, hours]));

/** Sets these hours of a mix, and the minutes of a session that keeping wet takes; 0 hours: not kept wet, 0 minutes: not planned. */
export const setMixWetCure = async (tx: Tx, mix: string, hours: number, minutes: number): Promise<void> => {
  await tx.delete(mixWetCures).where(eq(mixWetCures.mix, mix));
  if (hours > 0) await tx.insert(mixWetCures).values({ mix, hours, minutes });
};
