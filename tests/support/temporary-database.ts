import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import { type Database, openDatabase, type Tx } from '../../db/open.ts';
import { temporaryFolder } from './temporary-folder.ts';

type Fill = (tx: Tx) => Promise<unknown>;

/** The address of a database file that is gone when the test is over. */
export const temporaryUrl = (): string => `file:${join(temporaryFolder(), 'yard.db')}`;

const fileFilled = async (fill: Fill): Promise<Buffer> => {
  const folder = mkdtempSync(join(tmpdir(), 'yard-'));
  try {
    const database = await openDatabase({ url: `file:${join(folder, 'yard.db')}` });
    await database.write(fill);
    await database.close();
    return readFileSync(join(folder, 'yard.db'));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
};

/** Files of databases that were filled before in this process. To make all tables anew takes longer than most tests. */
const filled = new Map<Fill, Promise<Buffer>>();

const openUntilDone = async (url: string): Promise<Database> => {
  const database = await openDatabase({ url });
  onTestFinished(() => database.close());
  return database;
};

/** A database as a function filled it that fills each alike, gone when the test is over: filled once, and copied from then on. */
export const databaseFilled = async (fill: Fill): Promise<Database> => {
  const file = filled.get(fill) ?? fileFilled(fill);
  filled.set(fill, file);
  const path = join(temporaryFolder(), 'yard.db');
  writeFileSync(path, await file);
  return openUntilDone(`file:${path}`);
};

const withNothing: Fill = async () => {};

/** An empty, migrated database that is gone when the test is over. */
export const temporaryDatabase = (url?: string): Promise<Database> =>
  url === undefined ? databaseFilled(withNothing) : openUntilDone(url);
