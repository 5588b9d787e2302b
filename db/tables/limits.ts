import { type SQL, sql } from 'drizzle-orm';
import { type AnySQLiteColumn, check, integer } from 'drizzle-orm/sqlite-core';

/** Where a row stands in its list: a yard file comes out in the order in which it went in. */
export const position = () => integer().notNull();

type Columns = AnySQLiteColumn[];
const named = (prefix: string, column: AnySQLiteColumn, rule: SQL) => check(`${prefix}_${column.name}`, rule);

/** Columns that are never negative (or empty, where they may be). */
export const neverNegative = (columns: Columns) =>
  columns.map((column) => named('not_negative', column, sql`${column} >= 0`));

export const aboveZero = (columns: Columns) => columns.map((column) => named('above_zero', column, sql`${column} > 0`));

/** Columns that hold a `YYYY-MM-DD` that exists. */
export const dates = (columns: Columns) =>
  columns.map((column) => named('date', column, sql`${column} = date(${column})`));

export const flags = (columns: Columns) => columns.map((column) => named('flag', column, sql`${column} in (0, 1)`));

export const neverEmpty = (columns: Columns) =>
  columns.map((column) => named('not_empty', column, sql`length(${column}) > 0`));

/** A column that holds one of a fixed list of words. Only for lists of our own: they are written into the rule. */
export const oneOf = (column: AnySQLiteColumn, words: readonly string[]) =>
  named('one_of', column, sql`${column} in (${sql.raw(words.map((word) => `'${word}'`).join(', '))})`);
