import { desc, eq, inArray, sql } from 'drizzle-orm';
import { type CapturedTable, LOGGED_TABLES, rowText, UNDOABLE_TABLES } from '../capture.ts';
import { type CapturedRow, rowChanges } from '../tables/change.ts';
import type { Tx } from '../transaction.ts';
import { undoLine } from './stock-store.ts';

type RowChange = typeof rowChanges.$inferSelect;

/**
 * A row that no longer is as the change left it: its table, and its key by column name (empty where only the table is
 * known).
 */
export interface MovedOn {
  table: string;
  /** The columns that name the row, as SQL literals. */
  key: CapturedRow;
}

const tableOf = (name: string): CapturedTable => {
  const table = UNDOABLE_TABLES.get(name);
  if (!table) throw new Error(`No captured table is named ${name}.`);
  return table;
};

const keyOf = (table: CapturedTable, row: CapturedRow): CapturedRow =>
  Object.fromEntries(table.keys.map((key) => [key, row[key] ?? 'null']));

const pairs = (row: CapturedRow, between: string) =>
  Object.entries(row)
    .map(([column, literal]) => `"${column}" = ${literal}`)
    .join(between);

const rowNow = async (tx: Tx, table: CapturedTable, key: CapturedRow): Promise<CapturedRow | null> => {
  const select = `select ${rowText(table, `"${table.name}"`)} from "${table.name}" where ${pairs(key, ' and ')}`;
  const [row] = await tx.values<[string]>(sql.raw(select));
  return row ? JSON.parse(row[0]) : null;
};

/** Columns added since the row was captured do not count: nothing could have been known about them. */
const sameRow = (left: CapturedRow, now: CapturedRow | null) =>
  now !== null && Object.entries(left).every(([column, literal]) => now[column] === literal);

const statementBack = (
  { name }: CapturedTable,
  key: CapturedRow,
  oldRow: CapturedRow | null,
  newRow: CapturedRow | null,
) => {
  if (oldRow === null) return `delete from "${name}" where ${pairs(key, ' and ')}`;
  if (newRow !== null) return `update "${name}" set ${pairs(oldRow, ', ')} where ${pairs(key, ' and ')}`;
  const columns = Object.keys(oldRow).map((column) => `"${column}"`);
  return `insert into "${name}" (${columns.join(', ')}) values (${Object.values(oldRow).join(', ')})`;
};

const putRowBack = async (
  tx: Tx,
  { tableName, oldRow, newRow }: RowChange,
  undo: (() => Promise<void>) | null,
): Promise<MovedOn | null> => {
  const table = tableOf(tableName);
  const left = newRow ?? oldRow;
  if (!left) throw new Error(`A write to ${tableName} was captured without its row.`);
  const key = keyOf(table, left);
  const now = await rowNow(tx, table, key);
  const asLeft = newRow === null ? now === null : sameRow(newRow, now);
  // An entry of the log that was read in goes with it, even when its notice was put away since.
  const goesAnyway = LOGGED_TABLES.has(tableName) && oldRow === null;
  if (!asLeft && !goesAnyway) return { table: tableName, key };
  // The literals are what the database itself wrote down for its own values.
  await (undo ? undo() : tx.run(sql.raw(statementBack(table, key, oldRow, newRow))));
  return null;
};

/** Ids of materials that a change added, or took away. */
const materialsOf = (rows: readonly RowChange[], none: 'oldRow' | 'newRow'): Set<string | undefined> =>
  new Set(
    rows.flatMap((row) =>
      row.tableName === 'materials' && row[none] === null ? [(row.oldRow ?? row.newRow)?.id] : [],
    ),
  );

/**
 * Lines of the stock book that a change wrote, which stay there though it is undone (`undoLine`): not those of a material that it
 * added, which goes with its book, and none where it put another book in the place of this one, which is put back whole.
 */
const linesThatStay = (rows: readonly RowChange[]): ReadonlySet<RowChange> => {
  const lines = rows.filter(({ tableName }) => tableName === 'stockEntries');
  const [added, gone] = [materialsOf(rows, 'oldRow'), materialsOf(rows, 'newRow')];
  if (lines.some(({ oldRow, newRow }) => newRow === null && !gone.has(oldRow?.material))) return new Set();
  return new Set(lines.filter(({ oldRow, newRow }) => oldRow === null && !added.has(newRow?.material)));
};

/** What lines of the stock book are of, with the last that a change wrote or took back of it. */
interface LastLine {
  material: string;
  lengthMm: string;
  id: number;
}

const lastLinesOf = (rows: readonly RowChange[]): LastLine[] => {
  const last = new Map<string, LastLine>();
  for (const { tableName, oldRow, newRow } of rows) {
    const row = newRow ?? oldRow;
    if (tableName !== 'stockEntries' || !row) continue;
    const { material = 'null', lengthMm = 'null' } = row;
    const id = Math.max(Number(row.id), last.get(`${material} ${lengthMm}`)?.id ?? 0);
    last.set(`${material} ${lengthMm}`, { material, lengthMm, id });
  }
  return [...last.values()];
};

/**
 * A material of which the stock book has a line since, be there as much of it as then or not: without the lines of the change,
 * bags would have been used that never came. Lines since that were undone since are as good as none.
 */
const stockMovedOn = async (tx: Tx, rows: readonly RowChange[]): Promise<MovedOn | null> => {
  for (const { material, lengthMm, id } of lastLinesOf(rows)) {
    const since = `select 1 from "stockEntries" where "material" = ${material} and "lengthMm" is ${lengthMm} and "id" > ${id} group by coalesce("ofLine", "id") having count(*) % 2 = 1 limit 1`;
    if ((await tx.values(sql.raw(since))).length > 0) return { table: 'materials', key: { id: material } };
  }
  return null;
};

/** Rows that refer to one that is no longer there. */
const firstLeftBehind = async (tx: Tx): Promise<MovedOn | null> => {
  const [row] = await tx.values<[string]>(sql`pragma foreign_key_check`);
  return row ? { table: row[0], key: {} } : null;
};

/** True when it is still known what the change wrote. */
export const isCaptured = async (tx: Tx, change: number): Promise<boolean> =>
  (await tx.select({ id: rowChanges.id }).from(rowChanges).where(eq(rowChanges.change, change)).limit(1)).length > 0;

/** Those of the changes of which it is still known what they wrote. */
export const capturedAmong = async (tx: Tx, ids: readonly number[]): Promise<Set<number>> => {
  const rows = await tx
    .selectDistinct({ change: rowChanges.change })
    .from(rowChanges)
    .where(inArray(rowChanges.change, [...ids]));
  return new Set(rows.map(({ change }) => change));
};

/**
 * Puts back every row that the change wrote, the last one first; lines of the stock book stay, and others say as of `now` that they
 * were undone. Null when that is done, else the first row that has changed since: the caller then has to roll back.
 */
export const putRowsBack = async (tx: Tx, change: number, now: string): Promise<MovedOn | null> => {
  const rows = await tx.select().from(rowChanges).where(eq(rowChanges.change, change)).orderBy(desc(rowChanges.id));
  const stock = await stockMovedOn(tx, rows);
  if (stock) return stock;
  // Rows may refer to others that come back after them; what counts is that all is there in the end.
  await tx.run(sql`pragma defer_foreign_keys = on`);
  const staying = linesThatStay(rows);
  for (const row of rows) {
    const undo = staying.has(row) ? () => undoLine(tx, Number(row.newRow?.id), now) : null;
    const movedOn = await putRowBack(tx, row, undo);
    if (movedOn) return movedOn;
  }
  return firstLeftBehind(tx);
};
