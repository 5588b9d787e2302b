import { type Client, createClient } from '@libsql/client';
import { unreached } from '../away.ts';
import { captureWrites } from '../capture.ts';
import type { Database } from '../database.ts';
import { knownMigrations, migrateRemote } from '../migrate.ts';
import { LOCK_WAIT_MS, readerOf } from '../reader.ts';
import type { Tx } from '../transaction.ts';
import { migrationsDone, refuseOthers } from '../whose.ts';
import { writeQueue } from '../write-queue.ts';
import { keepCopyToOwner, ownCopy } from './own-copy.ts';
import { openReplica, type Replica } from './replica.ts';
import { shipped } from './ship.ts';
import { SHIPMENTS_TABLE } from './shipments.ts';

export interface FarAddress {
  /** A `libsql:`, `http:` or `https:` address. */
  syncUrl: string;
  token?: string;
  /** Where the copy is kept; without it there is one for as long as the program runs. */
  path: string | null;
  /** How long a write waits for a server that went away just then, in ms. */
  patienceMs?: number;
  /** How long others' changes may take to be seen here, in ms. */
  lookEveryMs?: number;
}

/** A server that is started anew is there again after some seconds; nobody waits for longer. */
const PATIENCE_MS = 8_000;
/** A server that takes longer to answer is away. */
const ANSWER_LIMIT_MS = 15_000;
const LOOK_MS = 2_000;

const MINUTE_MS = 60_000;

const inTime = (request: Request | string | URL, init?: RequestInit): Promise<Response> =>
  fetch(request, { ...init, signal: AbortSignal.timeout(ANSWER_LIMIT_MS) });

/** Whether the server answers. Throws where it does not let us in. */
const answers = async (far: Client): Promise<boolean> => {
  try {
    await far.execute('select 1');
    return true;
  } catch (error) {
    if (unreached(error)) return false;
    throw error;
  }
};

const isUpToDate = async (near: Client): Promise<boolean> => {
  const done = await migrationsDone(near);
  return knownMigrations().every((time) => done.includes(time));
};

/** Of two programs that start on one new server, the second finds it done. */
const migrated = async (far: Client, near: Client, replica: Replica): Promise<void> => {
  const failed: unknown = await migrateRemote(far).then(
    () => null,
    (error: unknown) => error,
  );
  await replica.sync();
  if (failed !== null && !(await isUpToDate(near))) throw failed;
};

/**
 * Brings the replica and the server up to date, as far as that answers: whether it does. Throws, in words, where nothing can
 * be shown yet, and where the data are not ours.
 */
const broughtUp = async (far: Client, near: Client, replica: Replica, fault: string | null): Promise<boolean> => {
  await refuseOthers(near, knownMigrations(), false);
  const isWhole = await isUpToDate(near);
  if (fault !== null && !isWhole)
    throw new Error(`the server cannot be reached, and there is no copy of it here to go on with (${fault})`);
  if (fault !== null) return false;
  if (!isWhole) await migrated(far, near, replica);
  await far.execute(SHIPMENTS_TABLE);
  await replica.sync();
  return true;
};

/** What is opened until the first of it fails: then all of it is closed again. */
const opened = async ({ syncUrl, token, path }: FarAddress) => {
  const far = createClient({ url: syncUrl, ...(token === undefined ? {} : { authToken: token }), fetch: inTime });
  const closing: (() => unknown)[] = [() => far.close()];
  const close = async () => {
    for (const end of closing.reverse()) await end();
  };
  try {
    const isAnswering = await answers(far);
    const copy = await ownCopy(path);
    closing.push(copy.leave);
    const url = `file:${copy.path}`;
    const replica = openReplica({ url, syncUrl, token: token ?? null });
    closing.push(replica.close);
    // The file is the replica's to make: nobody opens it before.
    const fault = isAnswering ? await replica.sync() : 'the server does not answer';
    const near = createClient({ url, timeout: LOCK_WAIT_MS, concurrency: 1 });
    closing.push(() => near.close());
    const isThere = await broughtUp(far, near, replica, fault);
    keepCopyToOwner(copy.path);
    const reader = readerOf(url);
    closing.push(reader.close);
    return { far, copy, replica, near, reader, isThere, close };
  } catch (error) {
    await close();
    throw error;
  }
};

/**
 * Opens a server's database by a replica of it on this machine: whatever is read is read there, and each write goes to the
 * server as a whole (`shipped`). What others write is seen within seconds. While the server is away, what is read is as old
 * as `minutesAway` says, and a write throws `PrimaryAway`.
 */
export const openFar = async (address: FarAddress): Promise<Database> => {
  const { patienceMs = PATIENCE_MS, lookEveryMs = LOOK_MS } = address;
  const { far, copy, replica, near, reader, isThere, close } = await opened(address);
  const queued = writeQueue();
  let [commits, isAway, underWay] = [0, !isThere, 0];
  let heard = isThere ? Date.now() : copy.heardAt();
  const watched: Pick<Replica, 'sync'> = {
    sync: async () => {
      const fault = await replica.sync();
      isAway = fault !== null;
      if (fault === null) heard = copy.hear();
      return fault;
    },
  };
  const write = <T>(work: (tx: Tx) => Promise<T>): Promise<T> =>
    queued(async () => {
      underWay += 1;
      try {
        const result = await shipped({ near, far, replica: watched, isAway: () => isAway, patienceMs }, work);
        commits += 1;
        return result;
      } finally {
        underWay -= 1;
      }
    });
  const look = () => {
    // Nothing is brought in while a write is rehearsed: it would wait for that. Nobody waits for a server that is away.
    if (underWay === 0) void (isAway ? watched.sync() : queued(watched.sync));
  };
  const looking = setInterval(look, lookEveryMs);
  looking.unref();
  const closed = async () => {
    clearInterval(looking);
    await queued(async () => undefined);
    await close();
  };
  if (isThere)
    await write(captureWrites).catch(async (error: unknown) => {
      await closed();
      throw error;
    });
  return {
    read: reader.read,
    written: reader.written,
    write,
    commits: () => commits,
    minutesAway: () => (isAway ? Math.floor((Date.now() - heard) / MINUTE_MS) : null),
    close: closed,
  };
};
