import type { Client, InStatement, Transaction } from '@libsql/client';
import { inTransaction, type Tx } from '../transaction.ts';

/** What one piece of work came to, and what it would write, in order. */
export interface Rehearsed<T> {
  result: T;
  writes: InStatement[];
}

/** Carries what came of the work out of the transaction, which only an error rolls back. */
class Over<T> extends Error {
  readonly result: T;
  constructor(result: T) {
    super('rehearsed');
    this.result = result;
  }
}

const textOf = (statement: InStatement): string => (typeof statement === 'string' ? statement : statement.sql);

/** Whatever may write: what only reads is not worth sending. */
const mayWrite = (statement: InStatement): boolean => !/^\s*(select|pragma)\b/i.test(textOf(statement));

const recording = (open: Transaction, writes: InStatement[]): Transaction => {
  const execute = open.execute.bind(open);
  open.execute = async (statement: InStatement) => {
    const result = await execute(statement);
    // One that failed, and was caught, wrote nothing.
    if (mayWrite(statement)) writes.push(statement);
    return result;
  };
  return open;
};

/**
 * Does the work in a write transaction of a replica, where every statement is near, writes down what it would write, and
 * rolls all of it back: a replica is written to by its server alone. Throws what the work throws.
 */
export const rehearse = async <T>(client: Client, work: (tx: Tx) => Promise<T>): Promise<Rehearsed<T>> => {
  const writes: InStatement[] = [];
  // What is rolled back is to leave no trace in the file, not even in what lies beside it.
  await client.execute('pragma cache_spill = off');
  const tried = inTransaction(
    client,
    'write',
    async (tx) => {
      throw new Over(await work(tx));
    },
    (open) => recording(open, writes),
  );
  const over: unknown = await tried.catch((error: unknown) => error);
  if (!(over instanceof Over)) throw over;
  return { result: over.result as T, writes };
};
