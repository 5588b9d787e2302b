import type { Browser, Locator } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { launchBrowser } from '../support/browser.ts';
import { screensOver } from '../support/screens.ts';
import { served, watchedPage } from '../support/served-screens.ts';
import { smallYard } from '../support/small-yard.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());

/** A tap on the map opens the panel of a mould; what is wrong with it stands in a part of that. */
const openForms = async (row: Locator): Promise<void> => {
  await row.locator('summary').first().click();
  await row.locator('.out-of-use > summary').click();
};

/* Worked out in tests/http/mould-routes.test.ts: with one mould the second panel is ready a week later. */
const tightYard = () =>
  smallYard({ work: [{ rule: 'FREQ=WEEKLY;BYDAY=SA', from: '2027-01-02', start: '08:00', end: '11:30' }] });

describe.each([
  ['with script', true],
  ['without script', false],
])('%s', (_how, javaScriptEnabled) => {
  test('a mould is marked damaged, a date moves, and that is undone', async () => {
    const url = await served(await screensOver(tightYard()));
    const { page, complaints } = await watchedPage(browser, { javaScriptEnabled });
    await page.goto(`${url}/moulds`);
    const row = page.locator('.mould', { hasText: '900 no. 2' });
    await openForms(row);
    await row.locator('[name=note]').fill('Base split');
    await row.getByRole('button', { name: 'Mark damaged: 900 no. 2' }).click();
    await page.waitForSelector('.notice');
    expect(await page.textContent('.notice')).toMatch(/School garden\s*: Sat 10 Apr to Sat 17 Apr, 7 days later/);
    expect(await page.inputValue('.notice textarea')).toContain('We had said Sat 10 Apr.');
    expect(await row.textContent()).toContain('Base split.');
    await page.getByRole('button', { name: 'Undo: 900 no. 2 marked damaged' }).click();
    await page.waitForSelector('text=Undone: 900 no. 2 marked damaged.');
    expect(await page.textContent('.notice')).toMatch(/School garden\s*: Sat 17 Apr to Sat 10 Apr, 7 days sooner/);
    expect(await row.textContent()).not.toContain('Base split.');
    expect(complaints).toEqual([]);
  });

  test('a broken part blocks the mould and moves a date; mended, it frees it', async () => {
    const url = await served(await screensOver(tightYard()));
    const { page, complaints } = await watchedPage(browser, { javaScriptEnabled });
    await page.setViewportSize({ width: 390, height: 844 });
    await page.goto(`${url}/mould/${encodeURIComponent('900 no. 2')}`);
    await page.getByText('A part is worn or broken').click();
    await page.getByText('Base', { exact: true }).last().click();
    await page.getByText('Broken', { exact: true }).click();
    await page.fill('#partNote', 'split along the grain');
    await page.getByRole('button', { name: 'Save' }).click();
    await page.waitForSelector('.notice');
    expect(await page.textContent('.notice')).toMatch(/School garden\s*: Sat 10 Apr to Sat 17 Apr, 7 days later/);
    await page.getByText('What it holds up').click();
    await page.waitForSelector('text=Were it mended today');
    expect(await page.textContent('main')).toMatch(/School garden\s*: Sat 17 Apr to Sat 10 Apr, 7 days sooner/);
    await page.getByRole('button', { name: 'Mended: base of 900 no. 2' }).click();
    await page.waitForSelector('.notice');
    expect(await page.textContent('.notice')).toMatch(/School garden\s*: Sat 17 Apr to Sat 10 Apr, 7 days sooner/);
    expect(await page.textContent('.mould-part')).toMatch(/Base\s*whole/);
    expect(complaints).toEqual([]);
  });

  test('a full one asks whether its piece is good', async () => {
    const inMould = [{ mould: '900 no. 1', casting: 'panel-900', filledAt: '2027-04-08T08:00:00+01:00' }];
    const url = await served(await screensOver(smallYard({ inMould })));
    const { page } = await watchedPage(browser, { javaScriptEnabled });
    await page.goto(`${url}/moulds`);
    const row = page.locator('.mould', { hasText: '900 no. 1' });
    await openForms(row);
    await row.locator('[name=note]').fill('Cracked end');
    await row.getByRole('button', { name: 'Mark damaged: 900 no. 1' }).click();
    await page.waitForSelector('.form-errors');
    expect(await row.locator('[name=note]').inputValue()).toBe('Cracked end');
    const [link] = await page.locator('.form-errors a').all();
    expect(await row.locator((await link?.getAttribute('href')) ?? '').count()).toBe(1);
    await row.getByText('Good', { exact: true }).click();
    await row.getByRole('button', { name: 'Mark damaged: 900 no. 1' }).click();
    await page.waitForSelector('text=900 no. 1 marked damaged.');
    expect(await row.textContent()).toContain('damaged, with a piece in it');
  });
});

test('after a tap far down the page what it did is in sight, and reading goes on there', async () => {
  const url = await served(await screensOver(tightYard()));
  const { page, complaints } = await watchedPage(browser, { viewport: { width: 390, height: 400 } });
  await page.goto(`${url}/moulds`);
  const row = page.locator('.mould', { hasText: '900 no. 2' });
  await openForms(row);
  await row.getByRole('button', { name: 'Mark damaged: 900 no. 2' }).click();
  const notice = page.locator('.notice');
  await notice.waitFor();
  const box = await notice.boundingBox();
  expect(box?.y).toBeGreaterThanOrEqual(0);
  expect(box?.y).toBeLessThan(400);
  expect(await page.evaluate(`document.activeElement === document.querySelector('.notice')`)).toBe(true);
  expect(complaints).toEqual([]);
});
