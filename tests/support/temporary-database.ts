import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import { type Database, openDatabase } from '../../db/open.ts';
import { temporaryFolder } from './temporary-folder.ts';

/** The address of a database file that is gone when the test is over. */
export const temporaryUrl = (): string => `file:${join(temporaryFolder(), 'yard.db')}`;

/** An empty, migrated database that is gone when the test is over. */
export const temporaryDatabase = async (url = temporaryUrl()): Promise<Database> => {
  const database = await openDatabase({ url });
  onTestFinished(() => database.close());
  return database;
};
