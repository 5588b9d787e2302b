import { asc, gte } from 'drizzle-orm';
import type { LateTaken } from '../../shared/late-work.ts';
import type { Minute } from '../../shared/time.ts';
import { lateWork } from '../tables/change.ts';
import type { Tx } from '../transaction.ts';

export type StoredLateWork = typeof lateWork.$inferSelect;

export const addLateTaken = async (tx: Tx, change: number, atMinute: Minute, taken: LateTaken): Promise<void> => {
  await tx.insert(lateWork).values({ change, atMinute, taken });
};

/** What changes took off the list of late work since a minute, as far as they stand. */
export const lateTakenSince = (tx: Tx, minute: Minute): Promise<StoredLateWork[]> =>
  tx.select().from(lateWork).where(gte(lateWork.atMinute, minute)).orderBy(asc(lateWork.change));
