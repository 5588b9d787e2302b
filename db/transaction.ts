import { setImmediate as othersFirst } from 'node:timers/promises';
import type { Client, InStatement, Transaction, TransactionMode } from '@libsql/client';
import { LibSQLSession, LibSQLTransaction } from 'drizzle-orm/libsql';
import { SQLiteAsyncDialect } from 'drizzle-orm/sqlite-core';

/**
 * What every store function works on: an open transaction. An update or removal of what is not there changes nothing;
 * an id that is taken, and a reference to or from what is not there, throw, and the whole transaction is rolled back.
 */
export type Tx = LibSQLTransaction<Record<string, never>, Record<string, never>>;

const dialect = new SQLiteAsyncDialect();

/**
 * The driver works on the one thread that serves everyone and a transaction is dozens of statements, so that after each of
 * them whatever waits has its turn.
 */
const takingTurns = (open: Transaction): Transaction => {
  const execute = open.execute.bind(open);
  open.execute = async (statement: InStatement) => {
    const result = await execute(statement);
    await othersFirst();
    return result;
  };
  return open;
};

/**
 * Runs the work in one transaction of the given kind; any error rolls all of it back. Drizzle's own `transaction` only
 * knows writing ones, and a read has to be one snapshot without keeping writers out. `watched` sees each of its statements.
 */
export const inTransaction = async <T>(
  client: Client,
  mode: TransactionMode,
  work: (tx: Tx) => Promise<T>,
  watched: (open: Transaction) => Transaction = (open) => open,
): Promise<T> => {
  const open = takingTurns(watched(await client.transaction(mode)));
  try {
    const session = new LibSQLSession<Record<string, never>, Record<string, never>>(
      client,
      dialect,
      undefined,
      {},
      open,
    );
    const result = await work(new LibSQLTransaction('async', dialect, session, undefined));
    await open.commit();
    return result;
  } finally {
    // Rolls back whatever was not committed, and gives the connection back.
    open.close();
  }
};
