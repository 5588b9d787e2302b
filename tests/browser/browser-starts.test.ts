import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { launchBrowser } from '../support/browser.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser?.close());

test('a browser starts and reads the title of a page', async () => {
  const page = await browser.newPage();
  await page.goto('data:text/html,<title>Two 1100 moulds</title><h1>Ready Sat 8 May</h1>');
  expect(await page.title()).toBe('Two 1100 moulds');
});

test('letters have a shape: a browser without fonts draws every one as the same box', async () => {
  const page = await browser.newPage();
  await page.setContent('<span id="narrow">iiiiiiii</span><br><span id="wide">mmmmmmmm</span>');
  const width = (id: string) => page.locator(`#${id}`).evaluate((span) => span.getBoundingClientRect().width);
  expect(await width('narrow')).toBeGreaterThan(0);
  expect(await width('wide')).toBeGreaterThan(2 * (await width('narrow')));
});
