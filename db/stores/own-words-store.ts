import { getTableColumns, isNotNull, sql, type Table } from 'drizzle-orm';
import { getTableConfig, type SQLiteColumn, type SQLiteTable } from 'drizzle-orm/sqlite-core';
import { textsIn } from '../../shared/texts-in.ts';
import { YARD_TABLES } from '../tables/yard-tables.ts';
import type { Tx } from '../transaction.ts';

/** Columns that name other rows, by their name in the database. */
const references = (table: SQLiteTable): ReadonlySet<string> =>
  new Set(getTableConfig(table).foreignKeys.flatMap((key) => key.reference().columns.map(({ name }) => name)));

/** Columns that hold texts, alone or within something. */
const textColumns = (table: SQLiteTable): SQLiteColumn[] =>
  (Object.values(getTableColumns(table as Table)) as SQLiteColumn[]).filter(
    ({ dataType, enumValues }) => (dataType === 'string' || dataType === 'json') && !enumValues?.length,
  );

/** Columns of free text: no key, no one of a few words. */
const freeColumns = (table: SQLiteTable): SQLiteColumn[] => {
  const named = references(table);
  return textColumns(table).filter(({ name, primary }) => !primary && name !== 'id' && !named.has(name));
};

/** Nobody's words: instants, days, clocks and numbers. */
const IS_FIGURE = /^[\d\s:.+TZ-]*$/;

/** All that the yard typed anywhere in words of its own, such as names and notes, each once. */
export const ownWordsOfYard = async (tx: Tx): Promise<string[]> => {
  const words = new Set<string>();
  for (const table of Object.values(YARD_TABLES) as SQLiteTable[])
    for (const column of freeColumns(table)) {
      const rows = await tx.selectDistinct({ value: column }).from(table).where(isNotNull(column));
      for (const { value } of rows) for (const text of textsIn(value)) if (!IS_FIGURE.test(text)) words.add(text);
    }
  return [...words];
};

/** Texts of the yard of more letters than so many, each once: what was typed or read in before there was a limit. Names that are keys too. */
export const textsLongerThan = async (tx: Tx, letters: number): Promise<string[]> => {
  const found = new Set<string>();
  for (const table of Object.values(YARD_TABLES) as SQLiteTable[])
    for (const column of textColumns(table)) {
      const rows = await tx.selectDistinct({ value: column }).from(table).where(sql`length(${column}) > ${letters}`);
      for (const { value } of rows) for (const text of textsIn(value)) if (text.length > letters) found.add(text);
    }
  return [...found];
};
