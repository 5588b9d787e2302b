import { createClient } from '@libsql/client';
import { readMigrationFiles } from 'drizzle-orm/migrator';
import { expect, test } from 'vitest';
import { storedPlan } from '../../db/stores/plan-store.ts';
import { handPlan } from '../support/planned-yard.ts';
import { temporaryDatabase, temporaryUrl } from '../support/temporary-database.ts';

/** A file as it was before moulds could be drying, with these rows in it. */
const before = async (...rows: { sql: string; args: (string | number)[] }[]): Promise<string> => {
  const url = temporaryUrl();
  const client = createClient({ url });
  const all = readMigrationFiles({ migrationsFolder: 'db/migrations' });
  const done = all.findIndex(({ sql }) => sql.some((one) => one.includes('`dryFrom`')));
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

/** The plan by hand as plans were: the set-up of no. 2 has its coat in it, and no list has coats. */
const coatedPlan = (): string => {
  const { coats: _coats, pours, ...plan } = handPlan();
  return JSON.stringify({ ...plan, version: 1, pours: pours.map((pour, i) => ({ ...pour, oiled: i === 1 })) });
};

test('a plan whose set-ups held coats can be read, and is good no more', async () => {
  const head = {
    sql: 'insert into plans (id, revision, madeAt, now, goodFromMinute, goodUntilMinute) values (?, ?, ?, ?, ?, ?)',
  };
  const url = await before(
    { ...head, args: [1, 7, '2027-04-08T09:00:00Z', '2027-04-08T09:00:00Z', 100, 200] },
    { sql: 'insert into planPieces (place, piece) values (?, ?)', args: [0, coatedPlan()] },
  );
  const database = await temporaryDatabase(url);
  const stored = await database.read(storedPlan);
  expect(stored?.plan).toEqual({ ...handPlan(), coats: [] });
  expect([stored?.goodFromMinute, stored?.goodUntilMinute]).toEqual([100, 100]);
});
