import { expect, test } from 'vitest';
import { type Database, openDatabase } from '../../db/open.ts';
import { createApp } from '../../src/http/app.ts';
import { behindDoor, OWNER } from '../support/behind-door.ts';
import { DEMO_NOW, demoScreens, withDemo } from '../support/screens.ts';
import { temporaryDatabase, temporaryUrl } from '../support/temporary-database.ts';

/** The demo, with a count of how often the data was read. */
const counted = async () => {
  const url = temporaryUrl();
  const real = await temporaryDatabase(url);
  await real.write(withDemo);
  const reads = { count: 0 };
  const database: Database = {
    ...real,
    read: (work) => {
      reads.count += 1;
      return real.read(work);
    },
  };
  const clock = { now: DEMO_NOW };
  const app = createApp({ database, now: () => clock.now });
  const text = async (path: string, headers: Record<string, string> = {}) =>
    (await app.request(path, { headers })).text();
  return { url, app, text, reads, clock };
};

const PAGES = ['/orders', '/orders/27-015', '/moulds', '/turns', '/buying', '/today', '/count', '/yard'];

test('a page is drawn once for all who ask in one minute, at once or one after the other', async () => {
  const { text, reads } = await counted();
  // The first of all makes the plan, which is a change.
  await text('/orders');
  for (const path of PAGES) {
    await text(path);
    reads.count = 0;
    const [first, again] = [await text(path), await text(path)];
    expect([path, again === first, reads.count]).toEqual([path, true, 0]);
  }
  reads.count = 0;
  const [one, other] = await Promise.all([text('/pieces'), text('/pieces')]);
  const together = reads.count;
  expect(one).toBe(other);
  reads.count = 0;
  await text('/pieces?find=none');
  expect(together).toBe(reads.count);
});

test('it is drawn anew in the next minute, after a change, and after one by another process', async () => {
  const { url, app, text, clock } = await counted();
  await text('/orders');
  const cancelled = await app.request('/orders/27-015/cancel', { method: 'POST', body: new URLSearchParams({}) });
  expect(cancelled.status).toBe(303);
  expect(await text('/orders')).not.toContain('/orders/27-015"');
  clock.now = '2027-04-05T12:01:00Z';
  expect(await text('/today')).toContain('12:01');
  const other = await openDatabase({ url });
  const elsewhere = createApp({ database: other, now: () => clock.now });
  await elsewhere.request('/orders/27-011/cancel', { method: 'POST', body: new URLSearchParams({}) });
  await other.close();
  expect(await text('/orders')).not.toContain('/orders/27-011"');
});

test('a part, another name on the device and a form with a key of its own are each their own', async () => {
  const { text } = await counted();
  const whole = await text('/today');
  expect(await text('/today', { 'HX-Request-Type': 'partial' })).not.toBe(whole);
  expect(await text('/today', { Cookie: 'who-is-here=Ada' })).not.toBe(whole);
  const keys = [await text('/orders/new'), await text('/orders/new')].map(
    (html) => /name="once" value="([^"]+)"/.exec(html)?.[1],
  );
  expect(keys[0]).toBeDefined();
  expect(keys[0]).not.toBe(keys[1]);
});

test('whoever has signed in gets his own, and nobody else gets it', async () => {
  const { database } = await demoScreens();
  const { get, signedIn } = await behindDoor(database, { now: DEMO_NOW });
  const owner = await signedIn(OWNER);
  expect(await (await get('/orders', owner)).text()).toContain(OWNER.name);
  expect((await get('/orders')).status).toBe(401);
  expect(await (await get('/orders', { ...owner, Host: 'other.example' })).text()).not.toContain('27-015');
});
