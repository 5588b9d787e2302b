import type { Database } from '../../db/open.ts';
import { replaceYard } from '../../db/stores/replace-yard.ts';
import type { YardFile } from '../../shared/yard-file.ts';
import type { UseCaseContext } from '../../src/usecases/core/context.ts';
import { smallYard } from './small-yard.ts';
import { temporaryDatabase } from './temporary-database.ts';

/** A database that holds the yard, at the yard's own now. */
export const yardContext = async (yard: YardFile = smallYard()): Promise<UseCaseContext & { database: Database }> => {
  const database = await temporaryDatabase();
  await database.write((tx) => replaceYard(tx, yard));
  return { database, now: yard.yard.now };
};
