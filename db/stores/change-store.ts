import { and, asc, desc, eq, gt, gte, isNotNull, isNull, lt, max, min, ne, sql } from 'drizzle-orm';
import {
  type CapturedRow,
  changes,
  changeUnderWay,
  notices,
  plannedAnew,
  rowChanges,
  type StoredDrop,
  type StoredPromise,
} from '../tables/change.ts';
import type { Tx } from '../transaction.ts';
import { inPartsById } from './rows.ts';

export type { StoredDrop, StoredPromise } from '../tables/change.ts';
/**
 * A change as it is stored; `at` is an instant, `before` and `after` are what the plan promised. `undoneBy` is the id
 * of the change that undid it.
 */
export type StoredChange = typeof changes.$inferSelect;
/** A session that was fixed and was planned anew by a change: its start, and what was fixed in it until then. */
export type PlannedAnew = typeof plannedAnew.$inferSelect;

const setUnderWay = async (tx: Tx, change: number | null): Promise<void> => {
  await tx
    .insert(changeUnderWay)
    .values({ id: 1, change })
    .onConflictDoUpdate({ target: changeUnderWay.id, set: { change } });
};

/**
 * From here on every write of this transaction is captured as part of the change, until `endChange`. Its id; changes
 * are numbered in the order in which they are made. `at` is an instant, `by` the name of whoever did it.
 */
export const beginChange = async (tx: Tx, change: { at: string; kind: string; by?: string }): Promise<number> => {
  const [added] = await tx
    .insert(changes)
    .values({ ...change, words: '', before: [], after: [] })
    .returning();
  if (!added) throw new Error('The change was not written down.');
  await setUnderWay(tx, added.id);
  return added.id;
};

/** The change that is being written in this transaction; null between changes. */
export const changeNow = async (tx: Tx): Promise<Pick<StoredChange, 'id' | 'at' | 'by'> | null> =>
  (
    await tx
      .select({ id: changes.id, at: changes.at, by: changes.by })
      .from(changeUnderWay)
      .innerJoin(changes, eq(changes.id, changeUnderWay.change))
  )[0] ?? null;

/** What a change did to the dates of the orders, and to what was fixed. */
export interface ChangeEffect {
  before: StoredPromise[];
  after: StoredPromise[];
  dropped: StoredDrop[];
}

/** Nothing more belongs to the change. */
export const endChange = async (tx: Tx, id: number, effect: ChangeEffect & { words: string }): Promise<void> => {
  await tx.update(changes).set(effect).where(eq(changes.id, id));
  await setUnderWay(tx, null);
};

/** Something that happened to the plan by itself: nothing is written with it that could be undone. */
export const addChange = async (
  tx: Tx,
  change: ChangeEffect & { at: string; kind: string; words: string },
): Promise<number> => {
  const [added] = await tx.insert(changes).values(change).returning();
  if (!added) throw new Error('The change was not written down.');
  return added.id;
};

/**
 * One change with all that it did to dates, or null where none has that id. Changes are never removed, but an archive
 * puts others in their place.
 */
export const changeById = async (tx: Tx, id: number): Promise<StoredChange | null> =>
  (await tx.select().from(changes).where(eq(changes.id, id)))[0] ?? null;

/** The instant of the first change of all that is done; null where there is none. */
export const firstChangeAt = async (tx: Tx): Promise<string | null> =>
  (await tx.select({ at: changes.at }).from(changes).where(ne(changes.words, '')).orderBy(asc(changes.id)).limit(1))[0]
    ?.at ?? null;

/** A change without what it did to the dates, which in a large yard is a long text. */
export type ChangeHead = Pick<StoredChange, 'id' | 'at' | 'kind' | 'words' | 'by' | 'undoneBy'>;

/** What a change did to the dates. */
export type MovedByChange = Pick<StoredChange, 'id' | 'at' | 'kind' | 'before' | 'after'>;

const MOVED = {
  ...{ id: changes.id, at: changes.at, kind: changes.kind },
  ...{ before: changes.before, after: changes.after },
};

const HEAD = {
  ...{ id: changes.id, at: changes.at, kind: changes.kind, words: changes.words },
  ...{ by: changes.by, undoneBy: changes.undoneBy },
};

/**
 * The newest first, `limit` at most; with `beforeId` only those older than that change, which need not be there any
 * more.
 */
export const recentHeads = (tx: Tx, limit: number, beforeId?: number): Promise<ChangeHead[]> =>
  tx
    .select(HEAD)
    .from(changes)
    .where(beforeId === undefined ? undefined : lt(changes.id, beforeId))
    .orderBy(desc(changes.id))
    .limit(limit);

/** Changes of kinds that begin so, which nobody has undone since: what each was, and when. The oldest first. */
export const standingOfKinds = (tx: Tx, beginning: string): Promise<{ kind: string; at: string }[]> =>
  tx
    .select({ kind: changes.kind, at: changes.at })
    .from(changes)
    .where(and(isNull(changes.undoneBy), sql`substr(${changes.kind}, 1, ${beginning.length}) = ${beginning}`))
    .orderBy(asc(changes.id));

/** Names under which something was done, the latest first, `limit` at most. */
export const namesLately = async (tx: Tx, limit: number): Promise<string[]> => {
  const rows = await tx
    .select({ by: changes.by })
    .from(changes)
    .where(isNotNull(changes.by))
    .groupBy(changes.by)
    .orderBy(desc(max(changes.id)))
    .limit(limit);
  return rows.flatMap(({ by }) => by ?? []);
};

const changesOf = async (tx: Tx, heads: readonly { id: number }[]): Promise<StoredChange[]> => {
  const all: StoredChange[] = [];
  for (const { id } of heads) all.push(...(await tx.select().from(changes).where(eq(changes.id, id))));
  return all;
};

/** Changes that moved a date and that nobody has undone, made from a date on and before another, as instants are written; the oldest first. */
export const changesThatMoved = (tx: Tx, { from, until }: { from: string; until: string }): Promise<MovedByChange[]> =>
  inPartsById((after, limit) =>
    tx
      .select(MOVED)
      .from(changes)
      .where(
        and(
          ...[gt(changes.id, after), gte(changes.at, from), lt(changes.at, until)],
          ...[isNull(changes.undoneBy), ne(changes.before, [])],
        ),
      )
      .orderBy(asc(changes.id))
      .limit(limit),
  );

/** The same with what each did to the dates, read one by one. */
export const recentChanges = async (tx: Tx, limit: number, beforeId?: number): Promise<StoredChange[]> =>
  changesOf(tx, await recentHeads(tx, limit, beforeId));

/** The changes of a kind that follow directly on one, the oldest first. */
export const changesNext = async (tx: Tx, id: number, kind: string): Promise<StoredChange[]> => {
  const [other] = await tx
    .select({ id: min(changes.id) })
    .from(changes)
    .where(and(gt(changes.id, id), ne(changes.kind, kind)));
  const next = tx
    .select({ id: changes.id })
    .from(changes)
    .where(and(gt(changes.id, id), lt(changes.id, other?.id ?? Number.MAX_SAFE_INTEGER)))
    .orderBy(asc(changes.id));
  return changesOf(tx, await next);
};

/** Sessions that were planned anew, by the change that did it. */
export const plannedAnews = (tx: Tx): Promise<PlannedAnew[]> => tx.select().from(plannedAnew);

/** Adds a session that a change planned anew. Throws where that change has one already. */
export const addPlannedAnew = async (tx: Tx, row: PlannedAnew): Promise<void> => {
  await tx.insert(plannedAnew).values(row);
};

/** The change `id` was undone by the change `by`. What it wrote is put back apart from this (`putRowsBack`). */
export const markUndone = async (tx: Tx, id: number, by: number): Promise<void> => {
  await tx.update(changes).set({ undoneBy: by }).where(eq(changes.id, id));
};

/** The change that this one undid stands again. */
export const markStandingAgain = async (tx: Tx, undoneBy: number): Promise<void> => {
  await tx.update(changes).set({ undoneBy: null }).where(eq(changes.undoneBy, undoneBy));
};

/**
 * Forgets how to undo changes made before an instant, and all but the last `keep`. What was done stays on record.
 * Instants of any offset are compared as instants, to the second.
 */
export const pruneCaptured = async (tx: Tx, before: string, keep: number): Promise<void> => {
  const last = tx.select({ id: changes.id }).from(changes).orderBy(desc(changes.id)).limit(keep);
  await tx.run(sql`
    delete from ${rowChanges} where ${rowChanges.change} not in ${last}
    or ${rowChanges.change} in ${tx
      .select({ id: changes.id })
      .from(changes)
      .where(sql`unixepoch(${changes.at}) < unixepoch(${before})`)}`);
};

/** Something the maker has to be told, about a change. It stays until it is put away or the change is undone. */
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

/** What was told while the clock was ahead of an instant is of days that have not come: it is put away. */
export const dismissNoticesAfter = async (tx: Tx, now: string): Promise<void> => {
  await tx
    .update(notices)
    .set({ dismissedAt: now })
    .where(and(isNull(notices.dismissedAt), sql`unixepoch(${notices.at}) > unixepoch(${now})`));
};

/** The maker has put a notice away at an instant. */
export const dismissNotice = async (tx: Tx, id: number, at: string): Promise<void> => {
  await tx.update(notices).set({ dismissedAt: at }).where(eq(notices.id, id));
};

/** The rows of one table as changes that can still be undone found and left them: each column as an SQL literal. */
export const capturedRows = async (tx: Tx, tableName: string): Promise<CapturedRow[]> => {
  const rows = await tx.select().from(rowChanges).where(eq(rowChanges.tableName, tableName));
  return rows.flatMap(({ oldRow, newRow }) => [oldRow, newRow].filter((row) => row !== null));
};
