import { createClient } from '@libsql/client';
import { whileBusy } from './busy.ts';
import type { Database } from './database.ts';
import { readPlaces } from './read-places.ts';
import { inTransaction } from './transaction.ts';

/**
 * How long the driver waits for a lock. It waits on the one thread that serves everyone, so this is short: waiting longer
 * is done between tries, with the thread free.
 */
export const LOCK_WAIT_MS = 15;

/** The driver refuses a transaction more than its pool has connections for, which is 20; further reads wait here. */
const READS_AT_ONCE = 8;

/**
 * Tells whether anything was committed (SQLite, "PRAGMA data_version"): by a connection that writes nothing itself, since
 * what a connection writes is no news to it.
 */
const watcherOf = (url: string) => {
  const client = createClient({ url, timeout: LOCK_WAIT_MS, concurrency: 1 });
  const written = async (): Promise<number> => {
    const { rows } = await whileBusy(
      () => client.execute('PRAGMA data_version'),
      async () => undefined,
    );
    return Number(rows[0]?.data_version);
  };
  return { written, close: () => client.close() };
};

/** What reads a file of this machine and writes nothing, whoever writes to it. */
export const readerOf = (url: string): Pick<Database, 'read' | 'written'> & { close(): void } => {
  const reader = createClient({ url, timeout: LOCK_WAIT_MS });
  const aFewAtOnce = readPlaces(READS_AT_ONCE);
  const watcher = watcherOf(url);
  return {
    read: (work) =>
      aFewAtOnce(() =>
        whileBusy(
          () => inTransaction(reader, 'read', work),
          async () => undefined,
        ),
      ),
    written: watcher.written,
    close: () => {
      watcher.close();
      reader.close();
    },
  };
};
