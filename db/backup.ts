import { chmodSync, closeSync, existsSync, fsyncSync, openSync, renameSync, rmSync } from 'node:fs';
import { type Client, createClient } from '@libsql/client';
import { isBusy, whileBusy } from './busy.ts';

const MARK_OF_PART = '.part';

const onFile = async <T>(path: string, work: (client: Client) => Promise<T>): Promise<T> => {
  const client = createClient({ url: `file:${path}` });
  try {
    return await work(client);
  } finally {
    client.close();
  }
};

const soundness = async (client: Client): Promise<string[]> => {
  const { rows } = await client.execute('pragma integrity_check');
  const torn = rows.map((row) => String(row[0])).filter((text) => text !== 'ok');
  if (torn.length > 0) return torn.map((text) => `damaged: ${text}`);
  const lost = (await client.execute('pragma foreign_key_check')).rows;
  return lost.map((row) => `row ${row[1]} of ${row[0]} refers to a row of ${row[2]} that is not there`);
};

/** What is wrong with a database file as such, in words: torn pages, references that lead nowhere. None where it is sound. */
export const faultsOfFile = (path: string): Promise<string[]> =>
  onFile(path, soundness).catch((error: Error) => [`it cannot be read: ${error.message}`]);

const written = (path: string): void => {
  const file = openSync(path, 'r+');
  fsyncSync(file);
  closeSync(file);
};

/**
 * Writes all of a database to a file of its own, for its owner alone, as it is at one moment (SQLite: VACUUM INTO), also
 * while others work on it. Throws, in words, where there is such a file already, or where what was written is not sound.
 */
const copyOf = async (client: Client, to: string): Promise<void> => {
  if (existsSync(to)) throw new Error(`there is a file ${to} already; it was left as it is`);
  const part = to + MARK_OF_PART;
  rmSync(part, { force: true });
  closeSync(openSync(part, 'wx', 0o600));
  await whileBusy(
    () => client.execute({ sql: 'vacuum into ?', args: [part] }),
    async () => client.reconnect(),
  );
  const [fault] = await faultsOfFile(part);
  if (fault !== undefined) throw new Error(`the copy ${part} is not sound: ${fault}`);
  written(part);
  renameSync(part, to);
};

/** `copyOf` the database in a file. */
export const backUpFile = (path: string, to: string): Promise<void> => {
  if (!existsSync(path)) throw new Error(`there is no database at ${path}`);
  return onFile(path, (client) => copyOf(client, to));
};

/**
 * What was written last comes into the file itself, which nobody else has open then; what is torn is left as it is. Throws a
 * busy error where another process has it open. On one connection: a second one of ours would be in its way.
 */
const takenAlone = (path: string): Promise<void> =>
  onFile(path, async (client) => {
    const faults = await soundness(client).catch((error: Error) => {
      if (isBusy(error)) throw error;
      return [error.message];
    });
    if (faults.length === 0) await client.execute('pragma journal_mode = delete');
  });

/**
 * Puts a sound database file in the place of another, which is kept under the name `aside`, with all that was written to it.
 * Throws a busy error where another process has the old one open, and changes nothing then.
 */
export const putInPlace = async (from: string, path: string, aside: string): Promise<void> => {
  const part = path + MARK_OF_PART;
  rmSync(part, { force: true });
  await backUpFile(from, part);
  if (existsSync(path)) {
    await takenAlone(path);
    renameSync(path, aside);
  }
  // What lies beside the old one would be read as the new one's.
  for (const end of ['-wal', '-shm', '-journal']) if (existsSync(path + end)) renameSync(path + end, aside + end);
  renameSync(part, path);
  chmodSync(path, 0o600);
};
