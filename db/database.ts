import type { Tx } from './transaction.ts';

export interface Database {
  /** One consistent look at the data. */
  read<T>(work: (tx: Tx) => Promise<T>): Promise<T>;
  /**
   * One queued write transaction. Await nothing but the database inside it; it may run again when the file was busy, or
   * somebody else has written to the server meanwhile.
   */
  write<T>(work: (tx: Tx) => Promise<T>): Promise<T>;
  /** How many writes have been committed here: while it stays the same nothing was changed, but by other processes. */
  commits(): number;
  /** Another number whenever anything was committed, by this process or another. */
  written(): Promise<number>;
  /**
   * For how many whole minutes the server has not been heard of whose replica is read here; null while it answers, and where
   * there is none.
   */
  minutesAway(): number | null;
  /** Lets the writes that were handed in end first. */
  close(): Promise<void>;
}
