import { mkdirSync } from 'node:fs';
import { dirname } from 'node:path';
import { type Client, createClient } from '@libsql/client';
import { whileBusy } from './busy.ts';
import { filePath } from './file-path.ts';
import { knownMigrations, migrateFile, migrateRemote } from './migrate.ts';
import { readPlaces } from './read-places.ts';
import { inTransaction, type Tx } from './transaction.ts';
import { expectFile, keepToOwner, refuseOthers } from './whose.ts';
import { writeQueue } from './write-queue.ts';

export type { Tx } from './transaction.ts';

export interface Database {
  /** One consistent look at the data. */
  read<T>(work: (tx: Tx) => Promise<T>): Promise<T>;
  /** One queued write transaction. Await nothing but the database inside it; it may run again when the file was busy. */
  write<T>(work: (tx: Tx) => Promise<T>): Promise<T>;
  /** How many writes have been committed here: while it stays the same nothing was changed, but by other processes. */
  commits(): number;
  /**
   * Another number whenever anything was committed, by this process or another; null where that cannot be told without
   * asking another machine.
   */
  written(): Promise<number | null>;
  /** Lets the writes that were handed in end first. */
  close(): Promise<void>;
}

export interface DatabaseAddress {
  /** `file:…` for the embedded file, or a `libsql:`, `http:` or `https:` address. */
  url: string;
  token?: string;
}

/**
 * How long the driver waits for a lock. It waits on the one thread that serves everyone, so this is short: waiting longer
 * is done between tries, with the thread free.
 */
const LOCK_WAIT_MS = 15;

/** The driver refuses a transaction more than its pool has connections for, which is 20; further reads wait here. */
const READS_AT_ONCE = 8;

const isFile = (url: string) => filePath(url) !== null;

/** For its owner alone, where it was not there. */
const makeFolderOf = (path: string) => mkdirSync(dirname(path), { recursive: true, mode: 0o700 });

const prepareFile = async (client: Client): Promise<void> => {
  await refuseOthers(client, knownMigrations(), true);
  // Readers and one writer may work on the file at once. The setting stays with the file.
  await client.execute('PRAGMA journal_mode = WAL');
  await migrateFile(client);
};

const prepareRemote = async (client: Client): Promise<void> => {
  await refuseOthers(client, knownMigrations(), false);
  await migrateRemote(client);
};

/** What was written last lies in a file beside the database: after this a copy of the database alone is whole. */
const gatherIntoFile = (client: Client) => client.execute('PRAGMA wal_checkpoint(TRUNCATE)');

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

const prepare = async (url: string, connect: () => Client): Promise<void> => {
  const client = connect();
  try {
    await whileBusy(
      () => (isFile(url) ? prepareFile(client) : prepareRemote(client)),
      async () => client.reconnect(),
    );
  } finally {
    client.close();
  }
};

/**
 * Opens the database, making the file and bringing its tables up to date first. Throws, in words, where the file is gone or
 * empty, and where what is in it is another program's or a newer version's; nothing was touched then.
 */
export const openDatabase = async ({ url, token }: DatabaseAddress): Promise<Database> => {
  const path = filePath(url);
  if (path !== null) {
    makeFolderOf(path);
    await expectFile(path);
  }
  const connect = () => createClient({ url, ...(token ? { authToken: token } : {}), timeout: LOCK_WAIT_MS });
  await prepare(url, connect);
  if (path !== null) keepToOwner(path);
  const reader = connect();
  // A client of its own: only the queue uses it, so reconnecting it takes nothing away from anyone else.
  const writer = connect();
  const queued = writeQueue();
  const aFewAtOnce = readPlaces(READS_AT_ONCE);
  const watcher = path === null ? null : watcherOf(url);
  let commits = 0;
  return {
    read: (work) =>
      aFewAtOnce(() =>
        whileBusy(
          () => inTransaction(reader, 'read', work),
          async () => undefined,
        ),
      ),
    write: (work) =>
      queued(async () => {
        const result = await whileBusy(
          () => inTransaction(writer, 'write', work),
          async () => writer.reconnect(),
        );
        commits += 1;
        return result;
      }),
    commits: () => commits,
    written: async () => watcher?.written() ?? null,
    close: async () => {
      await queued(async () => (isFile(url) ? gatherIntoFile(writer) : undefined));
      watcher?.close();
      reader.close();
      writer.close();
    },
  };
};
