import { chmodSync, existsSync, statSync, writeFileSync } from 'node:fs';
import { basename } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import type { Client } from '@libsql/client';

/** "MRot": the application id in the header of a database file of this program (SQLite file format, 1.3, offset 68). */
export const MARK = 0x4d526f74;

/** A new file is empty for as long as another process that is starting takes to fill it. */
const FILLING_MS = 5_000;
const LOOK_MS = 50;

/** Only whoever runs the program may read and write it: customers stand in it. */
const OWN_ALONE = 0o600;

/** What SQLite keeps beside a database file while that is open, or after its process was killed. */
const BESIDE = ['-wal', '-shm', '-journal'];

const noteOf = (path: string): string => `${path}.note.txt`;

const noteText = (path: string): string =>
  `Mould Rota keeps its database in the file ${basename(path)} beside this note. Where the note is there and the file is
not, the file was lost or moved: the program asks then, and makes no new one. Remove this note only to begin anew.\n`;

/** What tells that there was a database here: the note, or what was written last, which its file does not have yet. */
const signOf = (path: string): string | undefined =>
  [noteOf(path), `${path}-wal`, `${path}-journal`].find((one) => statSync(one, { throwIfNoEntry: false })?.size);

const isBeingFilled = (path: string): boolean => Date.now() < statSync(path).mtimeMs + FILLING_MS;

const isEmpty = (path: string): boolean => {
  const file = statSync(path, { throwIfNoEntry: false });
  return file?.isFile() === true && file.size === 0;
};

/**
 * Sees to it that a file that should be there is there, before anything is made in its place. Throws, in words, where it
 * is gone or empty; nothing was touched then.
 */
export const expectFile = async (path: string): Promise<void> => {
  const sign = existsSync(path) ? undefined : signOf(path);
  if (sign !== undefined)
    throw new Error(
      `there was a database, and it is gone (${sign} is still there). No new one was made. Put the file back, or a backup of it with "rota restore". To begin anew, remove ${sign}`,
    );
  while (isEmpty(path)) {
    if (!isBeingFilled(path))
      throw new Error(
        'the file is empty, so it is no database. It was left as it is. Put the right file in its place, or a backup with "rota restore". To begin anew, remove it',
      );
    await pause(LOOK_MS);
  }
};

/** The file and what lies beside it is for its owner alone; a note says that it is to be there. */
export const keepToOwner = (path: string): void => {
  for (const one of [path, ...BESIDE.map((end) => path + end)].filter((name) => existsSync(name)))
    chmodSync(one, OWN_ALONE);
  if (existsSync(path) && !existsSync(noteOf(path))) writeFileSync(noteOf(path), noteText(path), { mode: OWN_ALONE });
};

const one = async (client: Client, text: string): Promise<unknown> => (await client.execute(text)).rows[0]?.[0];

/** When each migration was made that a database has behind it, in ms since 1970. */
export const migrationsDone = async (client: Client): Promise<number[]> => {
  const isMigrated = await one(client, "select 1 from sqlite_master where name = '__drizzle_migrations'");
  if (!isMigrated) return [];
  return (await client.execute('select created_at from "__drizzle_migrations"')).rows.map((row) => Number(row[0]));
};

/**
 * Refuses, in words, tables of another program and those of a newer version of this one. `known` are the times of our
 * migrations, in ms since 1970, oldest first. Reads only; a file with nothing in it passes.
 */
export const refuseOthers = async (client: Client, known: readonly number[], isFile: boolean): Promise<void> => {
  const mark = isFile ? Number(await one(client, 'pragma application_id')) : MARK;
  const tables = Number(
    await one(client, "select count(*) from sqlite_master where name not like 'sqlite!_%' escape '!'"),
  );
  const done = await migrationsDone(client);
  const isOurs = done.some((time) => known.includes(time)) || (tables === 0 && [0, MARK].includes(mark));
  if (![0, MARK].includes(mark) || (!isOurs && (tables > 0 || done.length > 0)))
    throw new Error('it is the database of another program. Nothing in it was touched');
  if (Math.max(0, ...done) > (known.at(-1) ?? 0))
    throw new Error(
      'a newer version of Mould Rota has worked on it, which this one would damage. Nothing in it was touched. Start the newer version, or restore a backup from before',
    );
};
