import { eq } from 'drizzle-orm';
import type { YardFile } from '../../shared/yard-file.ts';
import { castings } from '../tables/casting.ts';
import { mixes } from '../tables/mix.ts';
import type { Tx } from '../transaction.ts';

/**
 * Writes the minutes of handling of every mix and panel that the file has, and how each mix sets; nothing else of it. Those not there are
 * passed over.
 */
export const updateTimes = async (tx: Tx, file: Pick<YardFile, 'mixes' | 'castings'>): Promise<void> => {
  for (const { id, mixMinutes, demouldMinutes, activationKelvin } of file.mixes)
    await tx.update(mixes).set({ mixMinutes, demouldMinutes, activationKelvin }).where(eq(mixes.id, id));
  for (const { id, prepMinutes, cleanMinutes, fillMinutes, stripMinutes } of file.castings)
    await tx.update(castings).set({ prepMinutes, cleanMinutes, fillMinutes, stripMinutes }).where(eq(castings.id, id));
};
