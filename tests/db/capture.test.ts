import { sql } from 'drizzle-orm';
import { expect, test } from 'vitest';
import { CAPTURED_TABLES, captureWrites } from '../../db/capture.ts';
import { temporaryDatabase } from '../support/temporary-database.ts';

/** Records about the data, not the data: undoing must leave them alone. */
const NOT_CAPTURED = [
  '__drizzle_migrations',
  'acts',
  'apiTokens',
  'calendarAddresses',
  'calendarEvents',
  'changeUnderWay',
  'changes',
  'doorKeys',
  'notices',
  'passkeys',
  'people',
  'planPieces',
  'plans',
  'revisions',
  'rowChanges',
];

test('every table is captured, or is a record about changes', async () => {
  const database = await temporaryDatabase();
  const rows = await database.read((tx) =>
    tx.all<{ name: string }>(sql`select name from sqlite_master where type = 'table' and name not like 'sqlite%'`),
  );
  expect(rows.map(({ name }) => name).sort()).toEqual([...CAPTURED_TABLES.keys(), ...NOT_CAPTURED].sort());
});

test('a capture that no longer fits its table, or is gone, is made anew', async () => {
  const database = await temporaryDatabase();
  const triggers = () =>
    database.read((tx) =>
      tx.all<{ name: string }>(sql`select name, sql from sqlite_master where type = 'trigger' order by name`),
    );
  const all = await triggers();
  expect(all).toHaveLength(CAPTURED_TABLES.size * 3);
  const nameOf = (start: string) => all.map(({ name }) => name).find((name) => name.startsWith(start)) ?? 'none';
  await database.write(async (tx) => {
    await tx.run(sql.raw(`drop trigger "${nameOf('capture_moulds_update_')}"`));
    await tx.run(sql.raw(`drop trigger "${nameOf('capture_orders_insert_')}"`));
    await tx.run(sql`create trigger "capture_orders_insert_of_old" after insert on "orders" begin select 1; end`);
    await captureWrites(tx);
  });
  expect(await triggers()).toEqual(all);
});
