import { sql } from 'drizzle-orm';
import { expect, test } from 'vitest';
import type { Database } from '../../db/open.ts';
import { recentChanges } from '../../db/stores/change-store.ts';
import { mouldById } from '../../db/stores/mould-store.ts';
import { screensOn, textOf } from '../support/screens.ts';
import { yardContext } from '../support/yard-context.ts';

/*
 * No disk is full here and no file is read-only, since whoever runs tests as root may write anywhere: SQLite itself refuses, by its
 * own limits of a connection, in the middle of the transaction.
 */
const LIMITS = {
  full: async (database: Database) => {
    const rows = await database.read((tx) => tx.all<{ page_count: number }>(sql`PRAGMA page_count`));
    return { pages: rows[0]!.page_count, only: 0 };
  },
  'read-only': async () => ({ pages: 1_000_000, only: 1 }),
  none: async () => ({ pages: 1_000_000, only: 0 }),
};

/** A yard whose database can be told to take nothing more. */
const limited = async () => {
  const { database: real, now } = await yardContext();
  let limit = await LIMITS.none();
  const database: Database = {
    ...real,
    write: (work) =>
      real.write(async (tx) => {
        await tx.run(sql.raw(`PRAGMA max_page_count = ${limit.pages}`));
        await tx.run(sql.raw(`PRAGMA query_only = ${limit.only}`));
        // Of the connection, which could begin nothing more.
        return work(tx).finally(() => tx.run(sql`PRAGMA query_only = 0`));
      }),
  };
  const screens = screensOn(database, now);
  const set = async (of: keyof typeof LIMITS) => {
    limit = await LIMITS[of](real);
  };
  return { ...screens, set, real };
};

const damaged = (mould: string): string => `/moulds/${encodeURIComponent(mould)}/damaged`;
/** So long that no page of the file has room for it. */
const NOTE = 'A corner has come loose, and the base is wet. '.repeat(40).trim();

test.each([
  ['full', 'There is no room left on the disk.'],
  ['read-only', 'The database may only be read.'],
] as const)(
  'where the disk is %s that is said, what was saved stays, and it goes on once it can',
  async (limit, words) => {
    const { get, post, set, real } = await limited();
    expect((await post(damaged('900 no. 1'), {})).status).toBe(303);
    const changes = () => real.read((tx) => recentChanges(tx, 5));
    const before = await changes();

    await set(limit);
    const refused = await post(damaged('900 no. 2'), { note: NOTE });
    expect([refused.status, refused.headers.get('Retry-After')]).toEqual([503, '5']);
    expect(await textOf(refused)).toContain(words);
    expect(await changes()).toEqual(before);
    expect((await get('/changes')).status).toBe(200);

    await set('none');
    expect((await post(damaged('900 no. 2'), { note: NOTE })).status).toBe(303);
    expect(await real.read((tx) => mouldById(tx, '900 no. 2'))).toMatchObject({ damageNote: NOTE });
  },
);
