import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { seedDemo } from '../../db/demo/larch-row.ts';
import { type Database, openDatabase } from '../../db/open.ts';
import { recentHeads } from '../../db/stores/change-store.ts';
import { replaceYard } from '../../db/stores/replace-yard.ts';
import { acts as actsTable, recordedSteps } from '../../db/tables/change.ts';
import { minuteOf } from '../../shared/time.ts';
import { createApp } from '../../src/http/app.ts';
import { assetVersion } from '../../src/http/assets.ts';
import { launchBrowser } from '../support/browser.ts';
import { demoAt } from '../support/demo-saturday.ts';
import { restartedServer } from '../support/restarted-server.ts';
import { startScript } from '../support/run-script.ts';
import { watchedPage } from '../support/served-screens.ts';
import { smallYard } from '../support/small-yard.ts';
import { temporaryDatabase } from '../support/temporary-database.ts';
import { temporaryFolder } from '../support/temporary-folder.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());

const PHONE = { hasTouch: true, isMobile: true, timezoneId: 'Europe/Dublin' } as const;
const KEEPS_PAGES = { ...PHONE, serviceWorkers: 'allow' } as const;

/** The demo on its Saturday morning, with a clock for the server and one for the phone. */
const saturdayOn = async (options: Parameters<typeof watchedPage>[1] = PHONE) => {
  const database = await temporaryDatabase();
  await database.write((tx) => seedDemo(tx, demoAt('00:00').slice(0, 10), demoAt('07:00')));
  const clock = { now: demoAt('08:05') };
  const app = createApp({ database, now: () => clock.now });
  const server = await restartedServer(app);
  const { page } = await watchedPage(browser, options);
  const at = async (time: string) => {
    clock.now = demoAt(time);
    await page.clock.setFixedTime(demoAt(time));
  };
  await at('08:05');
  await page.goto(`${server.url}/today`);
  return { database, app, server, page, at };
};

/** Taps a button of a step, be it folded away or not. */
const tap = async (page: Page, name: string) => {
  await page.evaluate("for (const one of document.querySelectorAll('#page details')) one.open = true");
  await page.getByRole('button', { name, exact: true }).first().tap();
};

const waiting = (page: Page): Promise<string[]> => page.locator('#waiting li').allTextContents();

/** Until it is so on the page; the policy of the page allows no text to be waited for in it. */
const until = async (page: Page, condition: string): Promise<void> => {
  while (!(await page.evaluate<boolean>(condition))) await page.waitForTimeout(50);
};

const waits = (page: Page, count: number) =>
  until(page, `document.querySelectorAll('#waiting li').length === ${count}`);

/** What was recorded, with its time, and who did each of the changes. */
const recorded = async (database: Database) => {
  const steps = await database.read((tx) => tx.select().from(recordedSteps));
  const heads = await database.read((tx) => recentHeads(tx, 50));
  return {
    minutesPastEight: steps.map(({ said }) => (said?.minute ?? 0) - minuteOf(demoAt('08:00'))),
    doneBy: heads.filter(({ words }) => /ready to pour|set up/i.test(words)).map(({ by }) => by),
  };
};

describe('without a signal', () => {
  test('Today is read, taps wait with their times, and each is recorded once when there is an answer', async () => {
    const { database, server, page, at } = await saturdayOn(KEEPS_PAGES);
    await until(page, 'navigator.serviceWorker.controller !== null');
    await page.goto(`${server.url}/who?back=/today`);
    await page.getByLabel('Your name').fill('Anna');
    await page.getByRole('button', { name: 'This is me' }).tap();
    await page.waitForURL(`${server.url}/today`);
    await server.stop();
    await page.context().setOffline(true);
    await page.reload();
    expect(await page.textContent('.as-kept')).toContain('No signal.');
    await at('08:07');
    await tap(page, 'Ready to pour: 900 no. 1');
    await waits(page, 1);
    expect(await waiting(page)).toEqual(['Ready to pour: 900 no. 1, 8:07']);
    expect(await page.isVisible('#not-sent')).toBe(false);
    const tapped = page.getByRole('button', { name: 'Ready to pour: 900 no. 1', exact: true }).first();
    expect(await tapped.isDisabled()).toBe(true);
    await at('08:20');
    await tap(page, 'Ready to pour: 900 no. 3');
    await waits(page, 2);
    await page.reload();
    await waits(page, 2);

    // The phone goes on to somebody else before what Anna did is sent.
    await page.evaluate("document.cookie = 'who-is-here=Ben; path=/'");
    await at('08:31');
    await page.context().setOffline(false);
    expect(await waiting(page)).toEqual(['Ready to pour: 900 no. 1, 8:07', 'Ready to pour: 900 no. 3, 8:20']);
    await server.start();
    await page.reload();
    await waits(page, 0);
    await until(page, "document.querySelector('.as-kept') === null");
    await page.waitForSelector('#waiting', { state: 'hidden' });
    const { minutesPastEight, doneBy } = await recorded(database);
    expect(minutesPastEight).toEqual([7, 20]);
    expect(doneBy).toEqual(['Anna', 'Anna']);
  });

  test('what can not be recorded any more is said in words, and stays until it is put away', async () => {
    const { app, server, page, at } = await saturdayOn();
    await server.stop();
    await tap(page, 'Ready to pour: 900 no. 1');
    await tap(page, 'Ready to pour: 900 no. 3');
    await waits(page, 2);
    await at('08:15');
    const damaged = await app.request('/moulds/900%20no.%201/damaged', { method: 'POST' });
    expect(damaged.status).toBe(303);
    await server.start();
    await page.reload();
    await page.waitForSelector('#waiting li strong');
    await waits(page, 1);
    expect(await page.textContent('#waiting')).toMatch(
      /^Sent later, and not recorded:Ready to pour: 900 no\. 1, 8:05\. .*900 no\. 1.*Open its page/,
    );
    await page.reload();
    await waits(page, 1);
    await page.getByRole('button', { name: 'Put away: Ready to pour: 900 no. 1, 8:05' }).tap();
    await waits(page, 0);
    await page.reload();
    await page.waitForTimeout(300);
    expect(await page.isVisible('#waiting')).toBe(false);
  });

  test('a tap that was heard and whose answer was lost is not done again', async () => {
    const { database, page, at } = await saturdayOn();
    await page.route('**/today/prepared', async (route) => {
      await route.fetch({ maxRedirects: 0 });
      await route.abort();
    });
    await tap(page, 'Ready to pour: 900 no. 1');
    await waits(page, 1);
    await page.unroute('**/today/prepared');
    await at('08:30');
    await page.evaluate("window.dispatchEvent(new Event('online'))");
    await waits(page, 0);
    const { doneBy } = await recorded(database);
    expect(doneBy).toHaveLength(1);
  });
});

/** Starts the program itself, and says where it is. */
const program = async (env: Record<string, string>) => {
  const running = startScript('src/main.ts', [], env);
  await running.said('Mould Rota is at http://');
  return { ...running, url: /http:\S+/.exec(running.written.stdout)?.[0] ?? '' };
};

/** So many acts are made, damaged and mended in turn: out of their order one of them would be refused. */
const ACTS = 200;
/** The server is killed when so many are left to send. */
const KILLED_AT = [150, 60];

/** Puts acts into the store of the phone, as taps without a signal do, and gives their keys in order. */
const ACTS_WAIT = `(async () => {
  const { openStore } = await import('/assets/waiting-store.js?v=${assetVersion}');
  const { actOf } = await import('/assets/acts.js?v=${assetVersion}');
  const store = await openStore();
  for (let n = 0; n < ${ACTS}; n++) {
    const how = n % 2 === 0 ? 'damaged' : 'mended';
    await store.add(actOf({ action: '/moulds/900%20no.%201/' + how, body: [['note', String(n)]] }));
  }
  return (await store.all()).map(({ key }) => key);
})()`;

/** The changes that acts made, in the order of their keys. */
const madeBy = async (url: string, keys: readonly string[]) => {
  const database = await openDatabase({ url });
  const made = await database.read(async (tx) => ({
    acts: new Map((await tx.select().from(actsTable)).map(({ key, change }) => [key, change])),
    words: new Map((await recentHeads(tx, 2 * ACTS)).map(({ id, words }) => [id, words])),
  }));
  await database.close();
  return { ...made, changes: keys.map((key) => made.acts.get(key) ?? 0) };
};

// Starts the server three times from its sources, which takes a busy machine a while.
test('a server that is killed twice among 200 acts has each of them once, in order, as the phone had them', {
  timeout: 240_000,
}, async () => {
  const env = { DATABASE_URL: `file:${temporaryFolder()}/yard.db`, PORT: '0' };
  const filled = await openDatabase({ url: env.DATABASE_URL });
  await filled.write((tx) => replaceYard(tx, smallYard()));
  await filled.close();
  let running = await program(env);
  const { page } = await watchedPage(browser, PHONE);
  await page.goto(`${running.url}/moulds`);
  const keys = await page.evaluate<string[]>(ACTS_WAIT);
  expect(new Set(keys).size).toBe(ACTS);
  for (const left of KILLED_AT) {
    await page.reload();
    await until(page, `document.querySelectorAll('#waiting li').length <= ${left}`);
    running.kill();
    await running.ended;
    running = await program({ ...env, PORT: new URL(running.url).port });
  }
  await page.reload();
  await waits(page, 0);
  const { acts, changes, words } = await madeBy(env.DATABASE_URL, keys);
  expect([...acts.keys()].sort()).toEqual([...keys].sort());
  expect(changes).toEqual([...changes].sort((a, b) => a - b));
  const inTurn = keys.map((_, n) => `900 no. 1 marked ${n % 2 === 0 ? 'damaged' : 'mended'}`);
  expect(changes.map((change) => words.get(change))).toEqual(inTurn);
  expect([...words.values()].filter((one) => one.includes('marked'))).toHaveLength(ACTS);
});
