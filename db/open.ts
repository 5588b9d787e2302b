import { mkdirSync } from 'node:fs';
import { dirname } from 'node:path';
import { type Client, createClient } from '@libsql/client';
import { whileBusy } from './busy.ts';
import type { Database } from './database.ts';
import { filePath } from './file-path.ts';
import { knownMigrations, migrateFile } from './migrate.ts';
import { LOCK_WAIT_MS, readerOf } from './reader.ts';
import { type FarAddress, openFar } from './replica/open-far.ts';
import { isReplica } from './replica/own-copy.ts';
import { inTransaction } from './transaction.ts';
import { expectFile, keepToOwner, refuseOthers } from './whose.ts';
import { writeQueue } from './write-queue.ts';

export type { Database } from './database.ts';
export type { Tx } from './transaction.ts';

export interface DatabaseAddress extends Pick<FarAddress, 'token' | 'patienceMs' | 'lookEveryMs'> {
  /** `file:…` for the embedded file, or a `libsql:`, `http:` or `https:` address. */
  url: string;
  /** The server of which the file is a replica. */
  syncUrl?: string;
}

/** For its owner alone, where it was not there. */
const makeFolderOf = (path: string) => mkdirSync(dirname(path), { recursive: true, mode: 0o700 });

const prepareFile = async (client: Client): Promise<void> => {
  await refuseOthers(client, knownMigrations(), true);
  // Readers and one writer may work on the file at once. The setting stays with the file.
  await client.execute('PRAGMA journal_mode = WAL');
  await migrateFile(client);
};

/** What was written last lies in a file beside the database: after this a copy of the database alone is whole. */
const gatherIntoFile = (client: Client) => client.execute('PRAGMA wal_checkpoint(TRUNCATE)');

const prepare = async (connect: () => Client): Promise<void> => {
  const client = connect();
  try {
    await whileBusy(
      () => prepareFile(client),
      async () => client.reconnect(),
    );
  } finally {
    client.close();
  }
};

/** The file of this machine. */
const openFile = async (url: string, path: string): Promise<Database> => {
  if (isReplica(path))
    throw new Error(
      'the file is a copy of a database server, which alone may be written to. Name that server in DATABASE_SYNC_URL',
    );
  makeFolderOf(path);
  await expectFile(path);
  const connect = () => createClient({ url, timeout: LOCK_WAIT_MS });
  await prepare(connect);
  keepToOwner(path);
  // A client of its own: only the queue uses it, so reconnecting it takes nothing away from anyone else.
  const writer = connect();
  const reader = readerOf(url);
  const queued = writeQueue();
  let commits = 0;
  return {
    read: reader.read,
    written: reader.written,
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
    minutesAway: () => null,
    close: async () => {
      await queued(() => gatherIntoFile(writer));
      reader.close();
      writer.close();
    },
  };
};

/**
 * Opens the database, making the file and bringing its tables up to date first. One behind an address is read from a replica
 * on this machine (`openFar`). Throws, in words, where the file is gone or empty, and where what is in it is another
 * program's or a newer version's; nothing was touched then.
 */
export const openDatabase = async ({ url, syncUrl, ...rest }: DatabaseAddress): Promise<Database> => {
  const path = filePath(url);
  const far = syncUrl ?? (path === null ? url : undefined);
  if (far !== undefined) return openFar({ syncUrl: far, path, ...rest });
  return openFile(url, path ?? url);
};
