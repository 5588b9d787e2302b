import { readFileSync } from 'node:fs';
import { createClient } from '@libsql/client';
import { sql } from 'drizzle-orm';
import { expect, test } from 'vitest';
import { openDatabase } from '../../../db/open.ts';
import { markImproved, planHead, savePlan, storedPlan } from '../../../db/stores/plan-store.ts';
import type { PlanFile } from '../../../shared/plan.ts';
import { planYard } from '../../../src/engine/plan.ts';
import { scaledYard } from '../../support/scaled-yard.ts';
import { smallYard } from '../../support/small-yard.ts';
import { temporaryDatabase, temporaryUrl } from '../../support/temporary-database.ts';

const head = {
  ...{
    revision: 3,
    madeAt: '2027-04-08T09:00:00Z',
    now: '2027-04-08T09:00:00Z',
    goodFromMinute: 1,
    goodUntilMinute: 2,
  },
  ...{ memory: { sequence: ['a'] }, unanswered: null, improved: false, anew: null, searchedUntilMinute: null },
};
const small = () => planYard(smallYard(), { effort: 'quick' });
const large = () => planYard(scaledYard(60, 12), { effort: 'quick' });
const asStored = (plan: PlanFile): PlanFile => JSON.parse(JSON.stringify(plan));

test('a plan is stored and read whole, however large, and a smaller one leaves nothing of it behind', async () => {
  const database = await temporaryDatabase();
  expect(await database.read(storedPlan)).toBe(null);
  for (const plan of [large(), small(), large()]) {
    await database.write((tx) => savePlan(tx, { ...head, plan }));
    expect(await database.read(storedPlan)).toMatchObject({ ...head, plan: asStored(plan) });
  }
});

test('every plan stored has a number of its own; marked improved it is the same plan', async () => {
  const database = await temporaryDatabase();
  const numbers: (number | undefined)[] = [];
  for (let round = 0; round < 3; round += 1) {
    const { number } = await database.write((tx) => savePlan(tx, { ...head, plan: small() }));
    await database.write(markImproved);
    const now = await database.read(planHead);
    expect(now).toMatchObject({ number, improved: true });
    numbers.push(number);
  }
  expect(new Set(numbers).size).toBe(3);
});

test('a plan that is stored in a write that fails was never there', async () => {
  const database = await temporaryDatabase();
  await database.write((tx) => savePlan(tx, { ...head, plan: small() }));
  const failing = database.write(async (tx) => {
    await savePlan(tx, { ...head, revision: 4, plan: large() });
    throw new Error('no');
  });
  await expect(failing).rejects.toThrow('no');
  expect(await database.read(storedPlan)).toMatchObject({ revision: 3, plan: asStored(small()) });
});

const migrations = new URL('../../../db/migrations/', import.meta.url);
const textOf = (name: string): string => readFileSync(new URL(name, migrations), 'utf8');

test('a plan that was stored before plans came in pieces is still there', async () => {
  const url = temporaryUrl();
  const client = createClient({ url });
  const { entries }: { entries: { tag: string; when: number }[] } = JSON.parse(textOf('meta/_journal.json'));
  const before = entries.slice(
    0,
    entries.findIndex(({ tag }) => tag.endsWith('_plan_pieces')),
  );
  await client.execute(
    'create table "__drizzle_migrations" (id integer primary key, hash text not null, created_at numeric)',
  );
  for (const { tag, when } of before) {
    await client.executeMultiple(textOf(`${tag}.sql`));
    await client.execute({
      sql: 'insert into "__drizzle_migrations" (hash, created_at) values (?, ?)',
      args: [tag, when],
    });
  }
  await client.execute({
    sql: `insert into plans (id, revision, madeAt, now, goodFromMinute, goodUntilMinute, plan) values (1, 3, 'a', 'b', 1, 2, ?)`,
    args: [JSON.stringify(small())],
  });
  client.close();
  const database = await openDatabase({ url });
  expect(await database.read(storedPlan)).toMatchObject({ revision: 3, now: 'b', plan: asStored(small()) });
  await database.close();
});

test('long pieces are packed in the file, and a short plan can be read there by anyone', async () => {
  const database = await temporaryDatabase();
  const rows = () =>
    database.read((tx) =>
      tx.all<{ kind: string; bytes: number }>(sql`select typeof(piece) kind, length(piece) bytes from "planPieces"`),
    );
  await database.write((tx) => savePlan(tx, { ...head, plan: small() }));
  expect(await rows()).toMatchObject([{ kind: 'text', bytes: JSON.stringify(small()).length }]);
  await database.write((tx) => savePlan(tx, { ...head, plan: large() }));
  const packed = (await rows()).filter(({ kind }) => kind === 'blob');
  expect(packed.length).toBeGreaterThan(1);
  for (const { bytes } of packed) expect(bytes).toBeLessThan(30_000);
});
