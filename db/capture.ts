import { createHash } from 'node:crypto';
import { sql } from 'drizzle-orm';
import { getTableConfig, type SQLiteTable } from 'drizzle-orm/sqlite-core';
import { changes, lateWork, notices, plannedAnew, recordedSteps } from './tables/change.ts';
import { YARD_TABLES } from './tables/yard-tables.ts';
import type { Tx } from './transaction.ts';

/** Every table whose rows a change may write, so that undoing it can put them back. */
const CAPTURED: SQLiteTable[] = [...Object.values(YARD_TABLES), plannedAnew, lateWork, recordedSteps];

export interface CapturedTable {
  name: string;
  columns: string[];
  keys: string[];
}

const describe = (table: SQLiteTable): CapturedTable => {
  const { name, columns, primaryKeys } = getTableConfig(table);
  const keys = primaryKeys.flatMap((key) => key.columns.map((column) => column.name));
  return {
    name,
    columns: columns.map((column) => column.name),
    keys: keys.length > 0 ? keys : columns.filter((column) => column.primary).map((column) => column.name),
  };
};

export const CAPTURED_TABLES: ReadonlyMap<string, CapturedTable> = new Map(
  CAPTURED.map(describe).map((table) => [table.name, table]),
);

/** Written by every change, or beside them, so no trigger captures them: only reading in an archive does, by hand. */
const LOGGED: SQLiteTable[] = [changes, notices];

export const LOGGED_TABLES: ReadonlySet<string> = new Set(LOGGED.map((table) => describe(table).name));

/** Every table of which an undo may find rows. */
export const UNDOABLE_TABLES: ReadonlyMap<string, CapturedTable> = new Map(
  [...CAPTURED, ...LOGGED].map(describe).map((table) => [table.name, table]),
);

/**
 * A row as JSON text: each column's value as an SQL literal, which keeps its type and, unlike a JSON number, the last
 * bit of a fraction. `rowText(table, 'NEW')` is `json_object('id', quote(NEW."id"), …)`.
 */
export const rowText = ({ columns }: CapturedTable, row: string): string =>
  `json_object(${columns.map((column) => `'${column}', quote(${row}."${column}")`).join(', ')})`;

/** The trigger that captures one kind of write, named after its own text. */
const triggerOf = (table: CapturedTable, event: 'insert' | 'update' | 'delete'): [name: string, text: string] => {
  const oldRow = event === 'insert' ? 'null' : rowText(table, 'OLD');
  const newRow = event === 'delete' ? 'null' : rowText(table, 'NEW');
  const insert = 'insert into "rowChanges" ("change", "tableName", "oldRow", "newRow")';
  const select = `select "change", '${table.name}', ${oldRow}, ${newRow} from "changeUnderWay" where "change" is not null`;
  const text = `after ${event} on "${table.name}" begin ${insert} ${select}; end`;
  const name = `capture_${table.name}_${event}_${createHash('sha256').update(text).digest('hex').slice(0, 12)}`;
  return [name, `create trigger "${name}" ${text}`];
};

/**
 * Sees to it that every write of a change is captured row by row, whatever statement made it. The triggers follow from
 * the table definitions, so they are made anew whenever those moved on; a migration that rebuilds a table drops them.
 */
export const captureWrites = async (tx: Tx): Promise<void> => {
  const wanted = new Map(
    [...CAPTURED_TABLES.values()].flatMap((table) => [
      triggerOf(table, 'insert'),
      triggerOf(table, 'update'),
      triggerOf(table, 'delete'),
    ]),
  );
  const there = await tx.all<{ name: string }>(
    sql`select name from sqlite_master where type = 'trigger' and name like 'capture!_%' escape '!'`,
  );
  for (const { name } of there) if (!wanted.delete(name)) await tx.run(sql.raw(`drop trigger "${name}"`));
  for (const text of wanted.values()) await tx.run(sql.raw(text));
};
