import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { launchBrowser } from '../support/browser.ts';
import { plannedYard, saturday } from '../support/planned-yard.ts';
import { screensOn, screensOver } from '../support/screens.ts';
import { served, watchedPage } from '../support/served-screens.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());

/** The phone's clock is wrong by this much. */
const PHONE = Date.parse(saturday('06:00')) - 7 * 60_000;

/** A batch is mixed from 8:22 on, by a server whose clock stands at 8:31. */
const working = async (): Promise<{ url: string }> => {
  const now = saturday('07:30');
  const { app, database } = await screensOver(plannedYard({ yard: { ...plannedYard().yard, now } }));
  await app.request('/today');
  return { url: await served(screensOn(database, saturday('08:31'))) };
};

/** The text of each clock that runs. */
const clocks = (page: Page): Promise<string[]> => page.locator('.clock:visible').allTextContents();

test('a clock counts down by the server, also when nobody answers, and a page out of the store sets it back by nothing', async () => {
  const { url } = await working();
  const { page, complaints } = await watchedPage(browser);
  await page.clock.install({ time: PHONE - 1000 });
  await page.clock.pauseAt(PHONE);
  await page.goto(`${url}/today`);
  const by = (await page.textContent('.clock-by')) ?? '';
  const [hour = 0, minute = 0] = by.split(':').map(Number);
  const left = hour * 60 + minute - (8 * 60 + 31);
  expect(left).toBeGreaterThan(5);
  expect(await clocks(page)).toEqual([`${left} min`]);
  await page.context().setOffline(true);
  await page.clock.fastForward(4 * 60_000);
  expect(await clocks(page)).toEqual([`${left - 4} min`]);
  await page.context().setOffline(false);
  // The server still says 8:31: so does a page that a browser had put by four minutes ago.
  await page.reload();
  expect(await clocks(page)).toEqual([`${left - 4} min`]);
  await page.clock.fastForward((left - 6) * 60_000);
  expect(await clocks(page)).toEqual(['2:00']);
  await page.clock.fastForward(3 * 60_000);
  expect(await clocks(page)).toEqual(['Stiffening? Throw it away, never add water.']);
  expect(complaints).toEqual([]);
});

test('without script the instants are written', async () => {
  const { url } = await working();
  const { page } = await watchedPage(browser, { javaScriptEnabled: false });
  await page.goto(`${url}/today`);
  expect(await page.textContent('.clock-line')).toMatch(/^Pour by 8:\d\d/);
  expect(await clocks(page)).toEqual([]);
});
