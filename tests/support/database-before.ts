import { createClient, type InStatement } from '@libsql/client';
import { readMigrationFiles } from 'drizzle-orm/migrator';
import { temporaryUrl } from './temporary-database.ts';

/** A file as it was before the first migration that speaks of a table or column, with these rows in it; its address. */
export const databaseBefore = async (name: string, rows: InStatement[]): Promise<string> => {
  const url = temporaryUrl();
  const client = createClient({ url });
  const all = readMigrationFiles({ migrationsFolder: 'db/migrations' });
  const done = all.findIndex(({ sql }) => sql.some((one) => one.includes(`\`${name}\``)));
  await client.execute(
    'create table "__drizzle_migrations" (id integer primary key, hash text not null, created_at numeric)',
  );
  for (const { sql, hash, folderMillis } of all.slice(0, done)) {
    await client.batch(sql);
    await client.execute({
      sql: 'insert into "__drizzle_migrations" (hash, created_at) values (?, ?)',
      args: [hash, folderMillis],
    });
  }
  await client.batch(rows);
  client.close();
  return url;
};
