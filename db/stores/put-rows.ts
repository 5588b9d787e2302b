import { and, asc, eq, inArray, type SQL } from 'drizzle-orm';
import { type AnySQLiteColumn, getTableConfig, type SQLiteTable } from 'drizzle-orm/sqlite-core';
import type { Tx } from '../transaction.ts';
import { insertAll } from './rows.ts';

type Row = Record<string, unknown>;

/** Few enough keys that a statement stays under the engine's limit of values. */
const KEYS_A_STATEMENT = 500;

const columnsOf = (table: SQLiteTable) => {
  const { columns, primaryKeys } = getTableConfig(table);
  const keys = primaryKeys.flatMap((key) => key.columns);
  return { columns, keys: keys.length > 0 ? keys : columns.filter((column) => column.primary) };
};

const textOf = (row: Row, columns: readonly AnySQLiteColumn[]): string =>
  JSON.stringify(columns.map(({ name }) => row[name] ?? null));

/** True where the database gives the rows their ids. */
const isNumbered = (keys: readonly AnySQLiteColumn[]): boolean => keys.length === 1 && keys[0]?.name === 'id';

/** Wanted rows without an id take that of a row that says the same; the others stay without, and get a new one. */
const withIds = (held: readonly Row[], wanted: readonly Row[], columns: readonly AnySQLiteColumn[]): Row[] => {
  const said = columns.filter(({ name }) => name !== 'id');
  const free = new Map<string, unknown[]>();
  for (const row of held) free.set(textOf(row, said), [...(free.get(textOf(row, said)) ?? []), row.id]);
  return wanted.map((row) => {
    if (row.id !== undefined) return row;
    const id = free.get(textOf(row, said))?.shift();
    return id === undefined ? row : { ...row, id };
  });
};

const isRow = (keys: readonly AnySQLiteColumn[], row: Row): SQL | undefined =>
  and(...keys.map((key) => eq(key, row[key.name])));

const removeRows = async (tx: Tx, table: SQLiteTable, keys: readonly AnySQLiteColumn[], rows: readonly Row[]) => {
  const [key, second] = keys;
  if (!key) throw new Error('A table without a key cannot be put row by row.');
  if (second) for (const row of rows) await tx.delete(table).where(isRow(keys, row));
  else
    for (let from = 0; from < rows.length; from += KEYS_A_STATEMENT) {
      const some = rows.slice(from, from + KEYS_A_STATEMENT).map((row) => row[key.name]);
      await tx.delete(table).where(inArray(key, some));
    }
};

/**
 * Makes a table hold just the wanted rows, each with all its columns, and writes only the rows that are other ones than
 * before: what a change did not touch can still be undone by itself.
 */
export const putRows = async <T extends SQLiteTable>(
  tx: Tx,
  table: T,
  held: readonly Row[],
  wantedRows: readonly Row[],
): Promise<void> => {
  const { columns, keys } = columnsOf(table);
  const wanted = isNumbered(keys) ? withIds(held, wantedRows, columns) : wantedRows;
  const before = new Map(held.map((row) => [textOf(row, keys), row]));
  const staying = new Set(wanted.map((row) => textOf(row, keys)));
  await removeRows(
    tx,
    table,
    keys,
    held.filter((row) => !staying.has(textOf(row, keys))),
  );
  const added: Row[] = [];
  for (const row of wanted) {
    const was = before.get(textOf(row, keys));
    if (!was) added.push(row);
    else if (textOf(was, columns) !== textOf(row, columns))
      await tx
        .update(table)
        .set(Object.fromEntries(columns.map(({ name }) => [name, row[name] ?? null])) as never)
        .where(isRow(keys, row));
  }
  await insertAll(tx, table, added as T['$inferInsert'][]);
};

/** All rows of a table: in their places where they have such, else as they came. */
export const rowsOf = async <T extends SQLiteTable>(tx: Tx, table: T): Promise<T['$inferSelect'][]> => {
  const { columns, keys } = columnsOf(table);
  const places = columns.filter(({ name }) => name === 'position');
  return (await tx
    .select()
    .from(table as SQLiteTable)
    .orderBy(...[...places, ...keys].map((column) => asc(column)))) as T['$inferSelect'][];
};

/**
 * Places for a list, given the place each entry has now (none for new ones): the same ones while they are in order, else
 * counted anew from `from`. `placesOf([2, undefined, 7])` is [2, 3, 7]; `placesOf([7, 2])` is [0, 1].
 */
export const placesOf = (now: readonly (number | undefined)[], from = 0): number[] => {
  const places: number[] = [];
  for (const place of now) {
    const least = (places.at(-1) ?? from - 1) + 1;
    if (place !== undefined && place < least && places.length > 0) return now.map((_, index) => from + index);
    places.push(place ?? least);
  }
  return places;
};
