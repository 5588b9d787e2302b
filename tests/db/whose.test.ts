import { chmodSync, existsSync, readFileSync, renameSync, rmSync, statSync, utimesSync, writeFileSync } from 'node:fs';
import { createClient } from '@libsql/client';
import { describe, expect, test } from 'vitest';
import { openDatabase } from '../../db/open.ts';
import { databaseBefore } from '../support/database-before.ts';
import { temporaryUrl } from '../support/temporary-database.ts';

const pathOf = (url: string): string => url.slice('file:'.length);
/** Why it is not opened; "opened" where it is. */
const refusal = async (url: string): Promise<string> => {
  try {
    await (await openDatabase({ url })).close();
    return 'opened';
  } catch (error) {
    return (error as Error).message;
  }
};

const modeOf = (path: string): string => (statSync(path).mode & 0o777).toString(8);

const openedOnce = async (): Promise<string> => {
  const url = temporaryUrl();
  await (await openDatabase({ url })).close();
  return url;
};

const changed = async (url: string, ...texts: string[]): Promise<void> => {
  const client = createClient({ url });
  for (const text of texts) await client.execute(text);
  client.close();
};

describe('a database file', () => {
  test('has the mark of the program in it, and is for its owner alone, with what lies beside it', async () => {
    const url = temporaryUrl();
    const database = await openDatabase({ url });
    await database.write(async () => undefined);
    for (const end of ['', '-wal', '-shm', '.note.txt']) expect([end, modeOf(pathOf(url) + end)]).toEqual([end, '600']);
    await database.close();
    expect(readFileSync(pathOf(url)).subarray(68, 72).toString()).toBe('MRot');
    chmodSync(pathOf(url), 0o644);
    await (await openDatabase({ url })).close();
    expect(modeOf(pathOf(url))).toBe('600');
  });

  test('of before there was a mark gets it', async () => {
    const url = await databaseBefore('sheets', []);
    await (await openDatabase({ url })).close();
    expect(readFileSync(pathOf(url)).subarray(68, 72).toString()).toBe('MRot');
  });

  test('that was there and is gone is asked about, and no new one is made', async () => {
    const url = await openedOnce();
    renameSync(pathOf(url), `${pathOf(url)}.moved`);
    expect(await refusal(url)).toMatch(/there was a database, and it is gone.*rota restore/);
    expect(existsSync(pathOf(url))).toBe(false);
    rmSync(`${pathOf(url)}.note.txt`);
    writeFileSync(`${pathOf(url)}-wal`, 'what was written last');
    expect(await refusal(url)).toMatch(/yard\.db-wal is still there/);
    rmSync(`${pathOf(url)}-wal`);
    expect(await refusal(url)).toBe('opened');
  });

  test('that is empty is asked about, and stays as it is', async () => {
    const url = temporaryUrl();
    writeFileSync(pathOf(url), '');
    utimesSync(pathOf(url), 0, 0);
    expect(await refusal(url)).toMatch(/the file is empty/);
    expect(statSync(pathOf(url)).size).toBe(0);
  });
});

describe('what is not ours is refused with a word, and stays as it is to the byte', () => {
  const untouched = async (url: string): Promise<string> => {
    const before = readFileSync(pathOf(url));
    const words = await refusal(url);
    expect(readFileSync(pathOf(url)).equals(before)).toBe(true);
    return words;
  };

  test('the database of another program', async () => {
    const url = temporaryUrl();
    await changed(url, 'create table songs (name text)');
    expect(await untouched(url)).toMatch(/the database of another program/);
    await changed(url, 'create table "__drizzle_migrations" (id integer primary key, hash text, created_at numeric)');
    await changed(url, 'insert into "__drizzle_migrations" values (1, \'theirs\', 1)');
    expect(await untouched(url)).toMatch(/the database of another program/);
  });

  test('one with the mark of another program and nothing in it yet', async () => {
    const url = temporaryUrl();
    await changed(url, 'pragma application_id = 7', 'create table t (a)', 'drop table t');
    expect(await untouched(url)).toMatch(/the database of another program/);
  });

  test('what is no database at all', async () => {
    const url = temporaryUrl();
    writeFileSync(pathOf(url), 'Dear Anna, '.repeat(500));
    expect(await untouched(url)).toMatch(/not a database/);
  });

  test('tables of a newer version, with all of its triggers', async () => {
    const url = await openedOnce();
    await changed(url, 'create trigger "capture_moulds_insert_newer" after insert on "moulds" begin select 1; end');
    await changed(
      url,
      'insert into "__drizzle_migrations" (hash, created_at) values (\'newer\', 9999999999999)',
      'pragma wal_checkpoint(truncate)',
    );
    expect(await untouched(url)).toMatch(/newer version of Mould Rota/);
  });
});
