import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Client } from '@libsql/client';
import { sql } from 'drizzle-orm';
import { drizzle } from 'drizzle-orm/libsql';
import { migrate } from 'drizzle-orm/libsql/migrator';
import { readMigrationFiles } from 'drizzle-orm/migrator';
import { captureWrites } from './capture.ts';
import { inTransaction, type Tx } from './transaction.ts';
import { MARK } from './whose.ts';

/** Beside this file in the source; two folders up or beside it in a bundle. */
const PLACES = ['./migrations', '../db/migrations', '../../db/migrations'];

const migrationsFolder = (): string => {
  const folders = PLACES.map((place) => fileURLToPath(new URL(place, import.meta.url)));
  const folder = folders.find((path) => existsSync(`${path}/meta/_journal.json`));
  if (!folder) throw new Error(`The database migrations are missing. Looked in ${folders.join(', ')}.`);
  return folder;
};

const newestDone = async (tx: Tx): Promise<number> => {
  // The table that drizzle-kit's own tools read and write.
  await tx.run(
    sql`create table if not exists "__drizzle_migrations" (id integer primary key, hash text not null, created_at numeric)`,
  );
  const [row] = await tx.values<[number | null]>(sql`select max(created_at) from "__drizzle_migrations"`);
  return Number(row?.[0] ?? 0);
};

/**
 * Brings the tables of a file up to date, all or nothing. It holds the write lock from the first look at what was done,
 * so several processes may start on one new file: the others wait and find it done.
 */
export const migrateFile = async (client: Client): Promise<void> => {
  const migrations = readMigrationFiles({ migrationsFolder: migrationsFolder() });
  // Takes effect outside transactions only. A rebuilt table is dropped and renamed, which its references must outlast.
  await client.execute('PRAGMA foreign_keys = off');
  await inTransaction(client, 'write', async (tx) => {
    const done = await newestDone(tx);
    for (const migration of migrations.filter(({ folderMillis }) => folderMillis > done)) {
      for (const statement of migration.sql) await tx.run(sql.raw(statement));
      await tx.run(
        sql`insert into "__drizzle_migrations" (hash, created_at) values (${migration.hash}, ${migration.folderMillis})`,
      );
    }
    await captureWrites(tx);
    await tx.run(sql.raw(`PRAGMA application_id = ${MARK}`));
  });
};

/** When each of our migrations was made, in ms since 1970, oldest first. */
export const knownMigrations = (): number[] =>
  readMigrationFiles({ migrationsFolder: migrationsFolder() }).map(({ folderMillis }) => folderMillis);

/** Brings the tables behind an address up to date, but for what captures writes: in one request, since a connection there has no settings that last. */
export const migrateRemote = async (client: Client): Promise<void> => {
  await migrate(drizzle(client), { migrationsFolder: migrationsFolder() });
};
