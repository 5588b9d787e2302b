import { and, asc, desc, eq, isNull, sql } from 'drizzle-orm';
import { changes, changeUnderWay, notices, rowChanges, type StoredPromise } from '../tables/change.ts';
import type { Tx } from '../transaction.ts';

export type { StoredPromise } from '../tables/change.ts';
export type StoredChange = typeof changes.$inferSelect;

const setUnderWay = async (tx: Tx, change: number | null): Promise<void> => {
  await tx
    .insert(changeUnderWay)
    .values({ id: 1, change })
    .onConflictDoUpdate({ target: changeUnderWay.id, set: { change } });
};

/** From here on every write of this transaction is captured as part of the change. */
export const beginChange = async (
  tx: Tx,
  change: { at: string; kind: string; before: StoredPromise[] },
): Promise<number> => {
  const [added] = await tx
    .insert(changes)
    .values({ ...change, words: '', after: [] })
    .returning();
  if (!added) throw new Error('The change was not written down.');
  await setUnderWay(tx, added.id);
  return added.id;
};

/** Nothing more belongs to the change. */
export const endChange = async (
  tx: Tx,
  id: number,
  { words, after }: { words: string; after: StoredPromise[] },
): Promise<void> => {
  await tx.update(changes).set({ words, after }).where(eq(changes.id, id));
  await setUnderWay(tx, null);
};

export const changeById = async (tx: Tx, id: number): Promise<StoredChange | null> =>
  (await tx.select().from(changes).where(eq(changes.id, id)))[0] ?? null;

/** The newest first. */
export const recentChanges = (tx: Tx, limit: number): Promise<StoredChange[]> =>
  tx.select().from(changes).orderBy(desc(changes.id)).limit(limit);

export const markUndone = async (tx: Tx, id: number, by: number): Promise<void> => {
  await tx.update(changes).set({ undoneBy: by }).where(eq(changes.id, id));
};

/** The change that this one undid stands again. */
export const markStandingAgain = async (tx: Tx, undoneBy: number): Promise<void> => {
  await tx.update(changes).set({ undoneBy: null }).where(eq(changes.undoneBy, undoneBy));
};

/** Forgets how to undo changes made before an instant, and all but the last `keep`. What was done stays on record. */
export const pruneCaptured = async (tx: Tx, before: string, keep: number): Promise<void> => {
  const last = tx.select({ id: changes.id }).from(changes).orderBy(desc(changes.id)).limit(keep);
  await tx.run(sql`
    delete from ${rowChanges} where ${rowChanges.change} not in ${last}
    or ${rowChanges.change} in ${tx
      .select({ id: changes.id })
      .from(changes)
      .where(sql`unixepoch(${changes.at}) < unixepoch(${before})`)}`);
};

export const addNotice = async (tx: Tx, notice: { at: string; words: string; change: number }): Promise<void> => {
  await tx.insert(notices).values(notice);
};

/** What the maker has not put away yet; nothing about a change that was undone. */
export const openNotices = (tx: Tx): Promise<{ id: number; at: string; words: string; change: number }[]> =>
  tx
    .select({ id: notices.id, at: notices.at, words: notices.words, change: notices.change })
    .from(notices)
    .innerJoin(changes, eq(changes.id, notices.change))
    .where(and(isNull(notices.dismissedAt), isNull(changes.undoneBy)))
    .orderBy(asc(notices.id));

export const dismissNotice = async (tx: Tx, id: number, at: string): Promise<void> => {
  await tx.update(notices).set({ dismissedAt: at }).where(eq(notices.id, id));
};
