import { max, type SQL } from 'drizzle-orm';
import type { AnySQLiteColumn, SQLiteTable } from 'drizzle-orm/sqlite-core';
import type { Tx } from '../transaction.ts';

type Present<T> = { [K in keyof T as null extends T[K] ? never : K]: T[K] } & {
  [K in keyof T as null extends T[K] ? K : never]?: Exclude<T[K], null>;
};

/**
 * A row as an entry of a yard file: columns without a value are fields that are left out.
 *
 * Example: `present({ id: 'a', note: null })` is `{ id: 'a' }`.
 */
export const present = <T extends object>(row: T): Present<T> =>
  Object.fromEntries(Object.entries(row).filter(([, value]) => value !== null)) as Present<T>;

/**
 * Rows by what they belong to, in the order in which they came; an owner of none has an empty list.
 *
 * Example: `belongings([{ of: 'a', n: 1 }, { of: 'a', n: 2 }], (row) => row.of, (row) => row.n)('a')` is [1, 2].
 */
export const belongings = <T, V>(rows: readonly T[], ownerOf: (row: T) => string, entry: (row: T) => V) => {
  const groups = new Map<string, V[]>();
  for (const row of rows) {
    const group = groups.get(ownerOf(row)) ?? [];
    group.push(entry(row));
    groups.set(ownerOf(row), group);
  }
  return (owner: string): V[] => groups.get(owner) ?? [];
};

/**
 * The place after the last of a list, or of the part of it that `where` leaves: 0 in an empty one. Places may have
 * gaps.
 */
export const nextPosition = async (
  tx: Tx,
  table: SQLiteTable & { position: AnySQLiteColumn },
  where?: SQL,
): Promise<number> => {
  const [row] = await tx
    .select({ last: max(table.position) })
    .from(table)
    .where(where);
  return Number(row?.last ?? -1) + 1;
};

/** Rows that are read in a few milliseconds. */
const ROWS_AT_ONCE = 200;

/**
 * All rows of a list that may be long, so many at a time, so that others have their turn in between. `part` reads as
 * many from a place on as it is told to, always in the same order. `most` ends it there; less than 0: no end.
 */
export const inParts = async <T>(part: (limit: number, offset: number) => Promise<T[]>, most = -1): Promise<T[]> => {
  const rows: T[] = [];
  for (;;) {
    const limit = most < 0 ? ROWS_AT_ONCE : Math.min(ROWS_AT_ONCE, most - rows.length);
    const more = limit > 0 ? await part(limit, rows.length) : [];
    rows.push(...more);
    if (more.length < ROWS_AT_ONCE) return rows;
  }
};

/**
 * The same of a list in the order of its ids, by the last one that was read: nothing is passed over twice where a filter has
 * to look at every row. The first part begins after 0.
 */
export const inPartsById = async <T extends { id: number }>(
  part: (after: number, limit: number) => Promise<T[]>,
): Promise<T[]> => {
  const rows: T[] = [];
  for (;;) {
    const more = await part(rows.at(-1)?.id ?? 0, ROWS_AT_ONCE);
    rows.push(...more);
    if (more.length < ROWS_AT_ONCE) return rows;
  }
};

/** Few enough rows that a statement stays under the engine's limit of values. */
const ROWS_A_STATEMENT = 500;

/** Adds rows, so many to a statement that it stays under the engine's limit of values. None at all is allowed. */
export const insertAll = async <T extends SQLiteTable>(tx: Tx, table: T, rows: T['$inferInsert'][]): Promise<void> => {
  for (let from = 0; from < rows.length; from += ROWS_A_STATEMENT)
    await tx.insert(table).values(rows.slice(from, from + ROWS_A_STATEMENT));
};
