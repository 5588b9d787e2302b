import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import { type Database, openDatabase } from '../../db/open.ts';

/** The address of a database file that is gone when the test is over. */
export const temporaryUrl = (): string => {
  const folder = mkdtempSync(join(tmpdir(), 'yard-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return `file:${join(folder, 'yard.db')}`;
};

/** An empty, migrated database that is gone when the test is over. */
export const temporaryDatabase = async (url = temporaryUrl()): Promise<Database> => {
  const database = await openDatabase({ url });
  onTestFinished(() => database.close());
  return database;
};
