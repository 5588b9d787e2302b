import { asc, eq } from 'drizzle-orm';
import { finishedPieces as table } from '../tables/mould.ts';
import type { Tx } from '../transaction.ts';
import { nextPosition } from './rows.ts';

export type StoredFinished = Omit<typeof table.$inferSelect, 'position'>;

/** As in the yard file, at the same places. */
export const finishedPieces = (tx: Tx): Promise<StoredFinished[]> =>
  tx
    .select({ id: table.id, casting: table.casting, count: table.count, readyAt: table.readyAt, order: table.order })
    .from(table)
    .orderBy(asc(table.position));

export const addFinished = async (tx: Tx, pieces: Omit<StoredFinished, 'id'>): Promise<void> => {
  await tx.insert(table).values({ ...pieces, position: await nextPosition(tx, table) });
};

/** None left: the entry goes. */
export const setFinishedCount = async (tx: Tx, id: number, count: number): Promise<void> => {
  if (count === 0) await tx.delete(table).where(eq(table.id, id));
  else await tx.update(table).set({ count }).where(eq(table.id, id));
};
