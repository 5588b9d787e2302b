import { asc, ne, sql } from 'drizzle-orm';
import type { ChangeLog } from '../../shared/change-log.ts';
import { CAPTURED_TABLES, type CapturedTable, rowText, UNDOABLE_TABLES } from '../capture.ts';
import { acts, changes, lateWork, notices, plannedAnew, recordedSteps, rowChanges } from '../tables/change.ts';
import type { Tx } from '../transaction.ts';
import { insertAll, present } from './rows.ts';

/** The change that reads an archive in is about this store, and goes into no archive. */
export const ARCHIVE_READ_IN = 'archive read in';

/** Everything that was done, the oldest first, each known by its place in the list. */
export const changeLog = async (tx: Tx): Promise<ChangeLog> => {
  const rows = await tx.select().from(changes).where(ne(changes.kind, ARCHIVE_READ_IN)).orderBy(asc(changes.id));
  const places = new Map(rows.map(({ id }, index) => [id, index]));
  const atPlace = <T extends { change: number }>(entries: T[]): T[] =>
    entries.flatMap((entry) => {
      const change = places.get(entry.change);
      return change === undefined ? [] : [{ ...entry, change }];
    });
  return {
    changes: rows.map(({ id: _id, undoneBy, ...row }) =>
      present({ ...row, undoneBy: (undoneBy === null ? null : places.get(undoneBy)) ?? null }),
    ),
    notices: atPlace(await tx.select().from(notices).orderBy(asc(notices.id))).map(({ id: _id, ...row }) =>
      present(row),
    ),
    plannedAnew: atPlace(await tx.select().from(plannedAnew).orderBy(asc(plannedAnew.change))),
  };
};

/**
 * Sees to it that the next change has a number with room for `length` others between it and all there are now: the
 * entries of a log that is read in come before the change that reads it in.
 */
export const makeRoomInLog = async (tx: Tx, length: number): Promise<void> => {
  const [row] = await tx.all<{ last: number }>(
    sql`select coalesce(max("seq"), 0) as last from sqlite_sequence where name = 'changes'`,
  );
  const next = (row?.last ?? 0) + length;
  await tx.run(sql`delete from sqlite_sequence where name = 'changes'`);
  await tx.run(sql`insert into sqlite_sequence(name, seq) values ('changes', ${next})`);
};

const tableNamed = (name: string): CapturedTable => {
  const table = UNDOABLE_TABLES.get(name);
  if (!table || CAPTURED_TABLES.has(name)) throw new Error(`Rows of ${name} are not captured by hand.`);
  return table;
};

/** No trigger captures the log, which is written by every change; so what is put in its place is captured here. */
const captureLog = async (tx: Tx, change: number, rows: 'oldRow' | 'newRow') => {
  for (const name of ['changes', 'notices']) {
    const own = name === 'changes' ? sql`where "id" <> ${change}` : sql``;
    const columns = sql.raw(`"rowChanges" ("change", "tableName", "${rows}")`);
    const text = sql.raw(rowText(tableNamed(name), `"${name}"`));
    await tx.run(sql`insert into ${columns} select ${change}, ${name}, ${text} from ${sql.raw(`"${name}"`)} ${own}`);
  }
};

/**
 * Puts a log in place of the one there is, before the change that does it (for which `makeRoomInLog` made room). What was
 * done until then can no longer be undone one by one, but the change itself can.
 */
export const replaceLog = async (tx: Tx, change: number, log: ChangeLog): Promise<void> => {
  await tx.run(sql`pragma defer_foreign_keys = on`);
  await tx.delete(rowChanges).where(ne(rowChanges.change, change));
  await captureLog(tx, change, 'oldRow');
  await tx.delete(plannedAnew);
  // These are there for undoing, and for what is sent twice, only.
  await tx.delete(lateWork);
  await tx.delete(recordedSteps);
  await tx.delete(acts);
  await tx.delete(notices);
  await tx.delete(changes).where(ne(changes.id, change));
  const idOf = (place: number) => change - log.changes.length + place;
  const placed = log.changes.map((entry, place) => ({
    ...entry,
    id: idOf(place),
    undoneBy: entry.undoneBy === undefined ? null : idOf(entry.undoneBy),
  }));
  await insertAll(tx, changes, placed);
  const noted = log.notices.map((notice) => ({ ...notice, change: idOf(notice.change) }));
  await insertAll(tx, notices, noted);
  await insertAll(
    tx,
    plannedAnew,
    log.plannedAnew.map((row) => ({ ...row, change: idOf(row.change) })),
  );
  await captureLog(tx, change, 'newRow');
};
