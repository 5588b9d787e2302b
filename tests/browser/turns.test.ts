import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { launchBrowser } from '../support/browser.ts';
import { demoScreens } from '../support/screens.ts';
import { served, watchedPage } from '../support/served-screens.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());

describe.each([
  ['with script', true],
  ['without script', false],
])('%s', (_how, javaScriptEnabled) => {
  test('a box of the chart opens its line of the table', async () => {
    const url = await served(await demoScreens());
    const { page, complaints } = await watchedPage(browser, { javaScriptEnabled });
    await page.goto(`${url}/turns`);
    const box = page.locator('.turns-chart a').first();
    const id = (await box.getAttribute('href')) ?? '';
    await box.click();
    const line = page.locator(`tr${id}`);
    expect(await line.evaluate((row) => row.matches(':target'))).toBe(true);
    const y = (await line.boundingBox())?.y ?? -1;
    expect(y).toBeGreaterThanOrEqual(0);
    expect(y).toBeLessThan(844);
    expect(complaints).toEqual([]);
  });
});

test('every text of the chart stays inside its box', async () => {
  const url = await served(await demoScreens());
  const { page } = await watchedPage(browser, { viewport: { width: 1280, height: 900 } });
  await page.goto(`${url}/turns`);
  const outside = await page.$$eval('.turns-chart a', (links) =>
    links.flatMap((link) => {
      const box = link.querySelector('.turn')!.getBoundingClientRect();
      return [...link.querySelectorAll('text')]
        .filter((text) => text.getBoundingClientRect().right > box.right)
        .map((text) => text.textContent);
    }),
  );
  expect(outside).toEqual([]);
});

test('on a phone each line of the table is read without scrolling sideways, and says what its moments are', async () => {
  const url = await served(await demoScreens());
  const { page } = await watchedPage(browser);
  await page.goto(`${url}/turns`);
  await page.click('.turns-told > summary');
  const room = page.locator('[aria-label="Turn by turn"]');
  expect(await room.evaluate(({ scrollWidth, clientWidth }) => scrollWidth - clientWidth)).toBe(0);
  const before = `getComputedStyle(document.querySelector('.turns-table td[data-said]'), '::before').content`;
  expect(await page.evaluate(before)).toContain('Poured');
  await page.setViewportSize({ width: 1280, height: 900 });
  expect(await page.evaluate(before)).toBe('none');
  expect(await page.locator('.turns-table thead').isVisible()).toBe(true);
});

test('on paper the whole chart is one picture, names and all', async () => {
  const url = await served(await demoScreens());
  const { page } = await watchedPage(browser, { viewport: { width: 1050, height: 700 } });
  await page.goto(`${url}/turns`);
  expect(await page.locator('.turns-paper').isVisible()).toBe(false);
  await page.emulateMedia({ media: 'print' });
  expect(await page.locator('.turns-frame').isVisible()).toBe(false);
  const paper = await page.locator('.turns-paper').boundingBox();
  expect((paper?.x ?? 0) + (paper?.width ?? 9999)).toBeLessThanOrEqual(1050);
  for (const part of ['#turns-names', '#turns-drawing']) {
    const box = await page.locator(`.turns-paper use[href="${part}"]`).boundingBox();
    expect(box?.height).toBeGreaterThan(100);
  }
});
