import { sql } from 'drizzle-orm';
import type { SQLiteTable } from 'drizzle-orm/sqlite-core';
import { YARD_TABLES } from '../tables/yard-tables.ts';
import type { Tx } from '../transaction.ts';
import { changeNow } from './change-store.ts';
import { putRows, rowsOf } from './put-rows.ts';
import { insertAll } from './rows.ts';
import { isSettled, type LotsWanted, withStockBook } from './stock-rows.ts';
import { stockSums } from './stock-store.ts';

type Tables = typeof YARD_TABLES;

/** The rows of each table, in their places. */
export type StoreRows = { [K in keyof Tables]: Tables[K]['$inferSelect'][] };

type Wanted<R> = R extends { id: number } ? Omit<R, 'id'> & { id?: number } : R;

/** The same with rows that may have no number yet. Every other column is there. */
export type WantedRows = { [K in keyof Tables]: Wanted<Tables[K]['$inferSelect']>[] };

const NAMES = Object.keys(YARD_TABLES) as (keyof Tables)[];

/** All that a yard holds, a list of rows to a table, in their places; not its plan and not its log. */
export const storeRows = async (tx: Tx): Promise<StoreRows> => {
  const rows: Partial<Record<keyof Tables, unknown[]>> = {};
  for (const name of NAMES) rows[name] = await rowsOf(tx, YARD_TABLES[name] as SQLiteTable);
  return rows as StoreRows;
};

/**
 * Where the stock book does not come to what is there, a line says that it was set right: what is put back may be of before
 * there was a stock book.
 */
export const settleStock = async (
  tx: Tx,
  now: string,
  { reason, lots }: { reason?: string; lots?: LotsWanted } = {},
): Promise<void> => {
  const there = {
    materials: await rowsOf(tx, YARD_TABLES.materials),
    offcuts: await rowsOf(tx, YARD_TABLES.offcuts),
  };
  // Lines grow in number: all of them are read only where something has to be set right.
  if (isSettled(there, await stockSums(tx)) && lots === undefined) return;
  const { id = null, by = null } = (await changeNow(tx)) ?? {};
  const rows = { ...there, stockEntries: await rowsOf(tx, YARD_TABLES.stockEntries) };
  const { stockEntries } = withStockBook(rows, { at: now, by, change: id, reason: reason ?? null }, lots);
  await insertAll(
    tx,
    YARD_TABLES.stockEntries,
    stockEntries.filter((line) => line.id === undefined),
  );
};

/** How the stock book calls what a file says otherwise than it. */
const BY_FILE = 'By a file';

/**
 * Makes the store hold just these rows. What stays as it is is not written. Where they say another amount of a material, the
 * stock book says that it was set right, as of `now` and by who makes the change. `lots`: of which bags it is, where they say.
 */
export const putStoreRows = async (
  tx: Tx,
  held: StoreRows,
  rows: WantedRows,
  now: string,
  lots?: LotsWanted,
): Promise<void> => {
  const { id = null, by = null } = (await changeNow(tx)) ?? {};
  const wanted = withStockBook(rows, { at: now, by, change: id, reason: BY_FILE }, lots);
  // Rows may refer to others that come after them; what counts is that all is there in the end.
  await tx.run(sql`pragma defer_foreign_keys = on`);
  for (const name of NAMES) await putRows(tx, YARD_TABLES[name] as SQLiteTable, held[name], wanted[name]);
};
