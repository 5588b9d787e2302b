import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { launchBrowser } from '../support/browser.ts';
import { demoScreens } from '../support/screens.ts';
import { served, watchedPage } from '../support/served-screens.ts';
import { sheetsOf } from '../support/sheets-of.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());

/** Headings under which nothing is printed, and everything to press or fill in that is. A mould on the map is itself to be read. */
const ofNoUse = (page: Page): Promise<string[]> =>
  page.evaluate(`(() => {
    const seen = (one) => one.checkVisibility() && one.getBoundingClientRect().height > 0;
    const alone = [...document.querySelectorAll('main section > :is(h2, h3)')].filter(
      (heading) => seen(heading) && ![...heading.parentElement.children].some((one) => one !== heading && seen(one)),
    );
    const controls = [...document.querySelectorAll('nav, button, select, summary:not(.mould-tile), main input:not([type=hidden])')].filter(seen);
    return [...alone, ...controls].map((one) => one.outerHTML.slice(0, 80));
  })()`);

// An A4 sheet between margins of 12 mm, in pixels.
const A4 = { width: 703, height: 1032 };

test.each([
  ['/today', 1],
  ['/today/sheet', 1],
  ['/today/evening', 1],
  ['/orders', 1],
  ['/orders/27-010', 1],
  ['/orders/27-011?holds=yes', 1],
  ['/buying', 3],
  ['/moulds', 2],
  ['/turns', 1],
  ['/kits/by-size', 2],
])('%s takes %i sheets at most, without anything that only a screen can use', async (path, sheets) => {
  const url = await served(await demoScreens());
  const { page } = await watchedPage(browser, { viewport: A4, colorScheme: 'dark' });
  await page.goto(url + path);
  await page.emulateMedia({ media: 'print', colorScheme: 'dark' });
  expect(await ofNoUse(page)).toEqual([]);
  expect(sheetsOf(await page.pdf({ format: 'A4', preferCSSPageSize: true }))).toBeLessThanOrEqual(sheets);
  const ink = `getComputedStyle(document.body).color + getComputedStyle(document.body).backgroundColor`;
  expect(await page.evaluate(ink)).toBe('rgb(0, 0, 0)rgb(255, 255, 255)');
});

test('lists for the shop that are open are printed alone', async () => {
  const url = await served(await demoScreens());
  const { page } = await watchedPage(browser, { viewport: A4 });
  await page.goto(`${url}/buying`);
  await page.locator('.trip .message > summary').first().click();
  await page.emulateMedia({ media: 'print' });
  const seen = await page
    .locator('main :is(h1, h2, h3, p, li, textarea)')
    .evaluateAll((all) => all.flatMap((one) => (one.checkVisibility() ? [one.textContent?.trim()] : [])));
  expect(seen).toEqual([expect.stringMatching(/^[^\n]+, (order|fetch) .+\n.+ of .+$/)]);
});
