import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { updateMould } from '../../db/stores/mould-store.ts';
import { createApp } from '../../src/http/app.ts';
import { ONE_DESK } from '../../src/http/own-names.ts';
import { launchBrowser } from '../support/browser.ts';
import { restartedServer } from '../support/restarted-server.ts';
import { DEMO_NOW, demoScreens, withDemo } from '../support/screens.ts';
import { watchedPage } from '../support/served-screens.ts';
import { databaseFilled } from '../support/temporary-database.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());

const PHONE = { serviceWorkers: 'allow', hasTouch: true, isMobile: true } as const;

const PATHS_KEPT = `(async () => {
  const name = (await caches.keys()).find((one) => one.startsWith('kept'));
  const keys = name ? await (await caches.open(name)).keys() : [];
  return keys.map(({ url }) => new URL(url).pathname).filter((path) => !path.includes('/assets/'));
})()`;

/** What is kept by the browser, once there is as much as that beside the page for when there is none. */
const kept = async (page: Page, least: number): Promise<string[]> => {
  for (;;) {
    const paths = await page.evaluate<string[]>(PATHS_KEPT);
    if (paths.filter((path) => !path.endsWith('/no-signal')).length >= least) return paths;
    await page.waitForTimeout(50);
  }
};

test('a phone keeps what is needed in the yard, shows it only while nobody answers, and says of when it is', async () => {
  const { app, database } = await demoScreens();
  const server = await restartedServer(app);
  const { page } = await watchedPage(browser, PHONE);
  await page.goto(`${server.url}/today`);
  const needed = ['/today', '/today/evening', '/today/sheet', '/moulds', '/no-signal'];
  expect(await kept(page, 4)).toEqual(expect.arrayContaining(needed));
  await page.goto(`${server.url}/mould/450%20no.%201`);
  await kept(page, 5);
  await page.goto(`${server.url}/orders`);

  await server.stop();
  await page.goto(`${server.url}/today?done=1`);
  expect(await page.textContent('.as-kept')).toMatch(/^No signal\. This page is as it was at \d{1,2}:\d\d\.$/);
  const styled = await page.evaluate('getComputedStyle(document.body).backgroundColor');
  expect(styled).toBe('rgb(242, 239, 233)');
  await page.goto(`${server.url}/mould/450%20no.%201`);
  expect(await page.textContent('main')).toContain('450 no. 1');
  await page.goto(`${server.url}/orders`);
  expect(await page.textContent('h1')).toBe('No signal: this page is not on this phone.');
  const listed = page.locator('.kept-pages li');
  expect((await listed.allTextContents()).map((line) => line.replace(/\d+:\d\d/, '9:40')).sort()).toEqual([
    '450 no. 1, as it was at 9:40',
    'Moulds, as it was at 9:40',
    'Sheet for the wall, as it was at 9:40',
    'The evening before, as it was at 9:40',
    'Today, as it was at 9:40',
  ]);
  await listed.getByText('Moulds').click();
  expect(await page.textContent('.as-kept')).toContain('No signal.');

  await database.write((tx) => updateMould(tx, '450 no. 1', { note: 'New base' }));
  await server.start();
  await page.reload();
  expect(await page.locator('.as-kept').count()).toBe(0);
  expect(await page.textContent('main')).toContain('New base');
});

test('what is sent is never kept, and a server that answers with a fault is shown', async () => {
  const { app } = await demoScreens();
  const server = await restartedServer(app);
  const { page } = await watchedPage(browser, PHONE);
  await page.goto(`${server.url}/moulds`);
  await kept(page, 4);
  await page.locator('.mould', { hasText: '600 no. 2' }).locator('.mould-tile').click();
  await page.getByRole('button', { name: 'Cleaned: 600 no. 2' }).click();
  await page.waitForSelector('.notice');
  await page.goto(`${server.url}/mould/nothing`);
  expect(await page.textContent('h1')).toBe('There is no such page.');
  const paths = await kept(page, 4);
  expect(paths.filter((path) => /cleaned|nothing|\?/.test(path))).toEqual([]);
  // The kept page has what was recorded on it in place.
  await page.goto(`${server.url}/moulds`);
  await server.stop();
  await page.reload();
  expect(await page.locator('button[aria-label="Cleaned: 600 no. 2"]').count()).toBe(0);
});

test('under a path all of it is asked for and kept there, and taps go there', async () => {
  const database = await databaseFilled(withDemo);
  const app = createApp({ database, now: () => DEMO_NOW, door: { ...ONE_DESK, path: '/rota' } });
  const server = await restartedServer(app);
  const { page, complaints } = await watchedPage(browser, PHONE);
  const asked: string[] = [];
  page.on('request', (request) => asked.push(new URL(request.url()).pathname));
  await page.goto(`${server.url}/rota/moulds`);
  const needed = ['/rota/today', '/rota/today/evening', '/rota/today/sheet', '/rota/moulds', '/rota/no-signal'];
  expect(await kept(page, 4)).toEqual(expect.arrayContaining(needed));
  await page.locator('.mould', { hasText: '600 no. 2' }).locator('.mould-tile').click();
  await page.getByRole('button', { name: 'Cleaned: 600 no. 2' }).click();
  await page.waitForSelector('.notice');
  expect(complaints).toEqual([]);
  expect(asked).toEqual(expect.arrayContaining(['/rota/changes/stream', '/rota/moulds/600%20no.%202/cleaned']));
  expect(asked.filter((path) => !path.startsWith('/rota/'))).toEqual([]);
  await server.stop();
  await page.goto(`${server.url}/rota/today`);
  expect(await page.textContent('.as-kept')).toContain('No signal.');
});
