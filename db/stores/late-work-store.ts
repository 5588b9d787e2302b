import { asc, gte } from 'drizzle-orm';
import type { LateTaken } from '../../shared/late-work.ts';
import type { Minute } from '../../shared/time.ts';
import { lateWork } from '../tables/change.ts';
import type { Tx } from '../transaction.ts';

/** What one change took off the list of late work, and at which minute (since 1970). */
export type StoredLateWork = typeof lateWork.$inferSelect;

/**
 * Keeps what a change takes off the list, with that change: undoing it takes the row back too. Throws where it has one
 * already.
 */
export const addLateTaken = async (tx: Tx, change: number, atMinute: Minute, taken: LateTaken): Promise<void> => {
  await tx.insert(lateWork).values({ change, atMinute, taken });
};

/**
 * What changes took off the list of late work at a minute or after it, oldest change first. Those undone have no row.
 */
export const lateTakenSince = (tx: Tx, minute: Minute): Promise<StoredLateWork[]> =>
  tx.select().from(lateWork).where(gte(lateWork.atMinute, minute)).orderBy(asc(lateWork.change));
