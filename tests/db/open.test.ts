import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { setTimeout as pause } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { createClient } from '@libsql/client';
import { describe, expect, test } from 'vitest';
import type { Database } from '../../db/open.ts';
import { materialById, updateMaterial } from '../../db/stores/material-store.ts';
import { storedPlan } from '../../db/stores/plan-store.ts';
import { replaceYard } from '../../db/stores/replace-yard.ts';
import { revision } from '../../db/stores/yard-store.ts';
import { largePlans } from '../support/large-plans.ts';
import { smallYard } from '../support/small-yard.ts';
import { countedNow } from '../support/stock-set.ts';
import { temporaryDatabase, temporaryUrl } from '../support/temporary-database.ts';

const start = (script: string, ...values: string[]): ChildProcess => {
  const path = fileURLToPath(new URL(`./processes/${script}`, import.meta.url));
  return spawn(process.execPath, ['--import', 'tsx', path, ...values], { stdio: ['ignore', 'pipe', 'inherit'] });
};

const ended = async (child: ChildProcess): Promise<number | null> => {
  const [code] = await once(child, 'exit');
  return code;
};

const stockOf = (database: Database, material: string) =>
  database.read(async (tx) => (await materialById(tx, material))?.onHand);

const yardWith = async (url: string, mortar: number, rod: number): Promise<Database> => {
  const database = await temporaryDatabase(url);
  await database.write(async (tx) => {
    await replaceYard(tx, smallYard());
    await countedNow(tx, 'mortar', mortar);
    await countedNow(tx, 'rod', rod);
  });
  return database;
};

describe('several processes on one file', () => {
  test('two that read and write the same number 300 times each lose nothing', async () => {
    const url = temporaryUrl();
    const database = await yardWith(url, 0, 0);
    const children = [start('add-one.ts', url, '300'), start('add-one.ts', url, '300')];
    expect(await Promise.all(children.map(ended))).toEqual([0, 0]);
    expect(await stockOf(database, 'mortar')).toBe(600);
  }, 60_000);

  test('one that is killed while writing leaves whole changes only', async () => {
    const url = temporaryUrl();
    const database = await yardWith(url, 100, 100);
    for (let round = 0; round < 3; round += 1) {
      const child = start('move-ten.ts', url);
      await Promise.race([child.stdout && once(child.stdout, 'data'), ended(child)]);
      expect(child.exitCode).toBe(null);
      const end = ended(child);
      child.kill('SIGKILL');
      await end;
      const [mortar = 0, rod = 0] = [await stockOf(database, 'mortar'), await stockOf(database, 'rod')];
      expect(mortar + rod).toBe(200);
    }
    const client = createClient({ url });
    expect((await client.execute('pragma integrity_check')).rows[0]?.[0]).toBe('ok');
    client.close();
  }, 60_000);

  test('one that is killed while it stores large plans leaves one of them, whole, with the revision it was made for', async () => {
    const url = temporaryUrl();
    const database = await yardWith(url, 0, 0);
    const plans = largePlans().map((plan) => JSON.parse(JSON.stringify(plan)));
    for (let round = 0; round < 3; round += 1) {
      const child = start('store-plans.ts', url);
      await Promise.race([child.stdout && once(child.stdout, 'data'), ended(child)]);
      expect(child.exitCode).toBe(null);
      await pause(round * 7);
      const end = ended(child);
      child.kill('SIGKILL');
      await end;
      const { stored, now } = await database.read(async (tx) => ({
        stored: await storedPlan(tx),
        now: await revision(tx),
      }));
      expect(stored?.revision).toBe(now);
      expect(stored?.plan).toEqual(plans[now % 2]);
    }
  }, 60_000);

  test('four that start on a file that is not there yet all find its tables', async () => {
    const url = temporaryUrl();
    const children = [1, 2, 3, 4].map(() => start('add-one.ts', url, '0'));
    expect(await Promise.all(children.map(ended))).toEqual([0, 0, 0, 0]);
    const client = createClient({ url });
    const { rows } = await client.execute('select count(*), count(distinct hash) from "__drizzle_migrations"');
    expect(rows[0]?.[0]).toBeGreaterThan(0);
    expect(rows[0]?.[0]).toBe(rows[0]?.[1]);
    client.close();
  }, 60_000);
});

describe('one process', () => {
  test('writes that are handed in at once come one after another', async () => {
    const database = await yardWith(temporaryUrl(), 0, 0);
    const addOne = () =>
      database.write(async (tx) => {
        const mortar = await materialById(tx, 'mortar');
        await countedNow(tx, 'mortar', (mortar?.onHand ?? Number.NaN) + 1);
      });
    await Promise.all(Array.from({ length: 40 }, addOne));
    expect(await stockOf(database, 'mortar')).toBe(40);
  });

  test('a write that fails is rolled back and does not hold up the next', async () => {
    const database = await yardWith(temporaryUrl(), 5, 0);
    const failing = database.write(async (tx) => {
      await countedNow(tx, 'mortar', 99);
      throw new Error('no');
    });
    const next = database.write((tx) => countedNow(tx, 'rod', 1));
    await expect(failing).rejects.toThrow('no');
    await next;
    expect(await stockOf(database, 'mortar')).toBe(5);
    expect(await stockOf(database, 'rod')).toBe(1);
  });

  test('a read sees one moment, whatever is written meanwhile', async () => {
    const database = await yardWith(temporaryUrl(), 5, 0);
    const seen = await database.read(async (tx) => {
      const first = (await materialById(tx, 'mortar'))?.onHand;
      await database.write((other) => countedNow(other, 'mortar', 6));
      return [first, (await materialById(tx, 'mortar'))?.onHand];
    });
    expect(seen).toEqual([5, 5]);
    expect(await stockOf(database, 'mortar')).toBe(6);
  });

  test('the tables refuse what no yard may hold', async () => {
    const database = await yardWith(temporaryUrl(), 5, 0);
    const set = (patch: Parameters<typeof updateMaterial>[2]) =>
      database.write((tx) => updateMaterial(tx, 'mortar', patch));
    await expect(database.write((tx) => countedNow(tx, 'mortar', -1))).rejects.toMatchObject({
      cause: { extendedCode: 'SQLITE_CONSTRAINT_CHECK' },
    });
    await expect(set({ pack: 0 })).rejects.toMatchObject({ cause: { extendedCode: 'SQLITE_CONSTRAINT_CHECK' } });
  });
});
