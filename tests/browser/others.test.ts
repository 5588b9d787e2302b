import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { seedDemo } from '../../db/demo/larch-row.ts';
import { createApp } from '../../src/http/app.ts';
import { launchBrowser } from '../support/browser.ts';
import { demoAt } from '../support/demo-saturday.ts';
import { demoScreens } from '../support/screens.ts';
import { served, watchedPage } from '../support/served-screens.ts';
import { temporaryDatabase } from '../support/temporary-database.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());

const demoToday = async () => {
  const database = await temporaryDatabase();
  await database.write((tx) => seedDemo(tx, demoAt('00:00').slice(0, 10), demoAt('07:00')));
  return { app: createApp({ database, now: () => demoAt('08:05') }) };
};

const moulds = async () => {
  const screens = await demoScreens();
  const url = await served(screens);
  const { page, complaints } = await watchedPage(browser);
  const heard = page.waitForRequest('**/changes/stream');
  await page.goto(`${url}/moulds`);
  await heard;
  const mark = async (mould: string, what: string, fields = {}) => {
    const answer = await screens.post(`/moulds/${encodeURIComponent(mould)}/${what}`, fields);
    expect(answer.status).toBe(303);
  };
  return { page, mark, complaints };
};

const shows = (page: Page, text: string) => page.getByText(text).first().waitFor({ state: 'attached' });

test('what others do is seen without loading the page, with focus and scroll where they were', async () => {
  const { page, mark, complaints } = await moulds();
  const button = page.locator('.mould', { hasText: 'Coping no. 2' }).locator('.mould-tile');
  await button.focus();
  await page.evaluate("document.body.dataset.same = 'yes'");
  const place = async () => Math.round((await button.boundingBox())?.y ?? 0);
  const before = await place();
  // The first word of the stream is the revision that the page was drawn at.
  await page.waitForTimeout(1500);
  await mark('450 no. 1', 'damaged', { note: 'Base split at the end' });
  await shows(page, 'Base split at the end');
  expect(await place()).toBe(before);
  expect(await page.evaluate("document.activeElement.closest('.mould')?.querySelector('h3').textContent")).toBe(
    'Coping no. 2',
  );
  expect(await page.evaluate('document.body.dataset.same')).toBe('yes');
  expect(complaints).toEqual([]);
});

test('what is being typed stays, and the page catches up once it is gone', async () => {
  const { page, mark } = await moulds();
  const row = page.locator('.mould', { hasText: '450 no. 2' });
  await row.locator('.mould-tile').click();
  await row.locator('.out-of-use > summary').click();
  await row.getByLabel('What is wrong').fill('A crack');
  await page.waitForTimeout(1500);
  await mark('450 no. 1', 'damaged', { note: 'Base split at the end' });
  await page.waitForTimeout(3000);
  expect(await row.getByLabel('What is wrong').inputValue()).toBe('A crack');
  expect(await page.getByText('Base split at the end').count()).toBe(0);
  await row.getByLabel('What is wrong').fill('');
  await row.locator('.mould-tile').focus();
  await shows(page, 'Base split at the end');
  expect(
    await page
      .locator('.mould', { has: page.locator('details[open]') })
      .locator('h3')
      .allTextContents(),
  ).toEqual(['450 no. 2']);
});

test('what was just done keeps its notice when the page is shown anew', async () => {
  const { page, mark } = await moulds();
  await page.waitForTimeout(1500);
  await page.locator('.mould', { hasText: '600 no. 2' }).locator('.mould-tile').click();
  await page.getByRole('button', { name: 'Cleaned: 600 no. 2' }).click();
  await page.waitForSelector('.notice');
  await mark('450 no. 1', 'damaged', { note: 'Base split at the end' });
  await shows(page, 'Base split at the end');
  expect(await page.textContent('.notice')).toContain('600 no. 2 marked cleaned.');
});

test('the button that has focus is the same one when a step before it is recorded by somebody else', async () => {
  const { app } = await demoToday();
  const url = await served({ app });
  const { page } = await watchedPage(browser);
  const heard = page.waitForRequest('**/changes/stream');
  await page.goto(`${url}/today`);
  await heard;
  const focused = () => page.evaluate<string | null>('document.activeElement.ariaLabel');
  await page.evaluate("for (const one of document.querySelectorAll('#page details')) one.open = true");
  const mine = page.getByRole('button', { name: 'Ready to pour: 600 no. 1', exact: true }).first();
  await mine.focus();
  const before = (await mine.boundingBox())?.y ?? 0;
  await page.waitForTimeout(1500);
  const form = { mould: '900 no. 1', casting: 'panel-900', sealed: '' };
  expect((await app.request('/today/prepared', { method: 'POST', body: new URLSearchParams(form) })).status).toBe(303);
  await page
    .getByRole('button', { name: 'Ready to pour: 900 no. 1', exact: true })
    .first()
    .waitFor({ state: 'detached' });
  await page.waitForTimeout(300);
  expect(await focused()).toBe('Ready to pour: 600 no. 1');
  expect(Math.abs(((await mine.boundingBox())?.y ?? 0) - before)).toBeLessThan(2);
});
