import {
  copyFileSync,
  existsSync,
  openSync,
  readdirSync,
  readFileSync,
  renameSync,
  statSync,
  writeFileSync,
  writeSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import { type Client, createClient } from '@libsql/client';
import { readMigrationFiles } from 'drizzle-orm/migrator';
import { describe, expect, test } from 'vitest';
import { type Database, openDatabase } from '../db/open.ts';
import { photoFolder, photosBeside } from '../db/photo-folder.ts';
import { openOrders } from '../db/stores/order-store.ts';
import { backUp, restore, verify } from '../src/backup-commands.ts';
import { currentPlan } from '../src/usecases/plan/make-plan.ts';
import { DEMO_NOW, withDemo } from './support/screens.ts';
import { temporaryUrl } from './support/temporary-database.ts';
import { temporaryFolder } from './support/temporary-folder.ts';

const pathOf = (url: string): string => url.slice('file:'.length);

const wordsOf = (found: { ok: true; value: string } | { ok: false; faults: { message: string }[] }): string =>
  found.ok ? found.value : found.faults.map(({ message }) => message).join('\n');

/** The demo in use, with its plan, and a backup that was made of it meanwhile. */
const backedUp = async () => {
  const url = temporaryUrl();
  const inUse = await openDatabase({ url });
  await inUse.write(withDemo);
  await currentPlan({ database: inUse, now: DEMO_NOW });
  const backup = join(dirname(pathOf(url)), 'backup.db');
  expect(wordsOf(await backUp(url, backup))).toBe(`Everything until now is in ${backup}.\n`);
  return { url, inUse, backup };
};

const ordersIn = (database: Database) => database.read(openOrders);

const ordersOf = async (url: string) => {
  const database = await openDatabase({ url });
  return ordersIn(database).finally(() => database.close());
};

/** A file that no connection of this process has had open. */
const copied = (file: string): string => {
  const path = join(temporaryFolder(), 'yard.db');
  copyFileSync(file, path);
  return path;
};

const changed = async (path: string, work: (client: Client) => Promise<unknown>): Promise<void> => {
  const client = createClient({ url: `file:${path}` });
  await client.execute('pragma foreign_keys = off');
  await work(client);
  client.close();
};

describe('rota backup', () => {
  test("is whole while the program runs, what was written last with it, and its owner's alone", async () => {
    const { url, inUse, backup } = await backedUp();
    expect(statSync(`${pathOf(url)}-wal`).size).toBeGreaterThan(0);
    expect((statSync(backup).mode & 0o777).toString(8)).toBe('600');
    expect(existsSync(`${backup}-wal`)).toBe(false);
    const before = readFileSync(backup);
    expect(wordsOf(await verify(backup))).toMatch(
      /^Larch Row Yard, \d+ open orders, [^\n]*\.\nAll of it is sound\.\n$/,
    );
    expect(readFileSync(backup).equals(before)).toBe(true);
    expect(await ordersOf(`file:${copied(backup)}`)).toEqual(await ordersIn(inUse));
    expect(wordsOf(await backUp(url, backup))).toContain('there is a file');
    expect(readFileSync(backup).equals(before)).toBe(true);
    await inUse.close();
  });

  test('without a name goes to a folder beside the database, and of what is no file or is not there says so', async () => {
    const { url, inUse } = await backedUp();
    expect((await backUp(url, undefined)).ok).toBe(true);
    expect(readdirSync(join(dirname(pathOf(url)), 'backups'))).toEqual([
      expect.stringMatching(/^mould-rota-[\dT-]+\.db$/),
    ]);
    expect(wordsOf(await backUp('https://yard.example', undefined))).toContain('no file of this machine');
    expect(wordsOf(await backUp(temporaryUrl(), undefined))).toContain('there is no database at');
    await inUse.close();
  });
});

describe('rota verify finds', () => {
  test('a torn page, a reference that leads nowhere, and what is no database of a yard', async () => {
    const { inUse, backup } = await backedUp();
    await inUse.close();
    const torn = copied(backup);
    const file = openSync(torn, 'r+');
    writeSync(file, Buffer.alloc(20_000, 7), 0, 20_000, Math.floor(statSync(torn).size / 2));
    expect(wordsOf(await verify(torn))).toMatch(/damaged|cannot be read/);
    const lost = copied(backup);
    await changed(lost, (client) => client.execute('delete from customers'));
    expect(wordsOf(await verify(lost))).toMatch(/row \d+ of orders refers to a row of customers that is not there/);
    const empty = copied(backup);
    await changed(empty, (client) => client.execute('delete from yards'));
    expect(wordsOf(await verify(empty))).toContain('it holds no yard');
    const unplanned = copied(backup);
    await changed(unplanned, (client) => client.execute('delete from planPieces'));
    expect(wordsOf(await verify(unplanned))).toContain('stored without its pieces');
    const letter = copied(backup);
    writeFileSync(letter, 'Dear Anna, '.repeat(1000));
    expect(wordsOf(await verify(letter))).toMatch(/cannot be read/);
    expect(wordsOf(await verify(join(dirname(letter), 'none.db')))).toContain('there is no file');
  });
});

describe('rota restore', () => {
  test('looks first; then puts the backup in place, and keeps what was there', async () => {
    const { inUse, backup } = await backedUp();
    const wanted = await ordersIn(inUse);
    await inUse.close();
    const path = copied(backup);
    await changed(path, (client) => client.execute('delete from orders'));
    const moved = copied(path);
    const before = readFileSync(moved);
    const look = wordsOf(await restore(`file:${moved}`, backup, false));
    expect(look).toMatch(
      /^(Now|The database that is there now)[^\n]*\nFrom the backup: Larch Row Yard[^\n]*\nNothing was changed\./,
    );
    expect(readFileSync(moved).equals(before)).toBe(true);
    expect(wordsOf(await restore(`file:${moved}`, backup, true))).toContain(
      'The backup is in its place. What was there is kept in',
    );
    expect(await ordersOf(`file:${moved}`)).toEqual(wanted);
    const aside = readdirSync(dirname(moved)).find((name) => name.startsWith('yard.db.before-'));
    expect(readFileSync(join(dirname(moved), aside ?? '')).equals(before)).toBe(true);
  });

  test('is refused while the program runs on the database, and of a file that is not sound', async () => {
    const { url, inUse, backup } = await backedUp();
    expect(wordsOf(await restore(url, backup, true))).toContain('Mould Rota is running on the database');
    expect(wordsOf(await verify(backup))).toContain('sound');
    writeFileSync(backup, 'torn');
    expect(wordsOf(await restore(url, backup, true))).toMatch(/cannot be read/);
    expect((await ordersIn(inUse)).length).toBeGreaterThan(5);
    await inUse.close();
  });

  test("where the database is gone leaves nothing of the old one that would be read as the new one's", async () => {
    const { inUse, backup } = await backedUp();
    const wanted = await ordersIn(inUse);
    const path = copied(backup);
    copyFileSync(`${pathOf((await backedUp()).url)}-wal`, `${path}-wal`);
    renameSync(path, `${path}.gone`);
    expect(wordsOf(await restore(`file:${path}`, backup, true))).toContain('There is no database');
    expect(existsSync(`${path}-wal`)).toBe(false);
    expect(await ordersOf(`file:${path}`)).toEqual(wanted);
    await inUse.close();
  });
});

/** The rows of a database in the tables of an earlier version: of each table the columns that it had then. */
const asBefore = async (file: string, versions: number): Promise<string> => {
  const path = join(temporaryFolder(), 'old.db');
  const all = readMigrationFiles({ migrationsFolder: 'db/migrations' });
  await changed(path, async (client) => {
    await client.execute(
      'create table "__drizzle_migrations" (id integer primary key, hash text not null, created_at numeric)',
    );
    for (const { sql, hash, folderMillis } of all.slice(0, all.length - versions)) {
      for (const statement of sql) await client.execute(statement);
      await client.execute({
        sql: 'insert into "__drizzle_migrations" (hash, created_at) values (?, ?)',
        args: [hash, folderMillis],
      });
    }
    // A version that made a table anew put the keys on again.
    await client.execute('pragma foreign_keys = off');
    await client.execute({ sql: 'attach ? as newer', args: [file] });
    const { rows } = await client.execute(
      "select name from sqlite_master where type = 'table' and name not like 'sqlite!_%' escape '!' and name not like '!_!_%' escape '!'",
    );
    for (const { name } of rows) {
      const columns = (await client.execute(`select name from pragma_table_info('${name}')`)).rows
        .map((row) => `"${row.name}"`)
        .join(', ');
      await client.execute(`delete from main."${name}"`);
      await client.execute(`insert into main."${name}" (${columns}) select ${columns} from newer."${name}"`);
    }
  });
  return path;
};

test('photos go along with a backup, and come back with it', async () => {
  const { url, inUse } = await backedUp();
  await inUse.close();
  const photo = await photoFolder(photosBeside(pathOf(url))).keep(new Uint8Array([0xff, 0xd8, 0xff]));
  const to = join(temporaryFolder(), 'kept', 'backup.db');
  expect(wordsOf(await backUp(url, to))).toBe(
    `Everything until now is in ${to}, and 1 photo in ${join(dirname(to), 'photos')}.\n`,
  );
  const path = join(temporaryFolder(), 'yard.db');
  expect(wordsOf(await restore(`file:${path}`, to, true))).toContain(`and 1 photo in ${photosBeside(path)}.`);
  expect(await photoFolder(photosBeside(path)).read(photo)).toEqual(new Uint8Array([0xff, 0xd8, 0xff]));
});

test('a backup of each of the last three versions is verified, put in place and read', async () => {
  const { inUse, backup } = await backedUp();
  const wanted = (await ordersIn(inUse)).map(({ id, lines }) => ({ id, lines }));
  await inUse.close();
  for (const versions of [1, 2, 3]) {
    const old = await asBefore(copied(backup), versions);
    expect([versions, wordsOf(await verify(old))]).toEqual([versions, expect.stringContaining('All of it is sound.')]);
    const path = join(temporaryFolder(), 'yard.db');
    expect((await restore(`file:${path}`, old, true)).ok).toBe(true);
    expect((await ordersOf(`file:${path}`)).map(({ id, lines }) => ({ id, lines }))).toEqual(wanted);
  }
});
