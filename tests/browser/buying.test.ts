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
  test('something is bought, waits on its way, arrives, and that is undone', async () => {
    const url = await served(await demoScreens());
    const { page, complaints } = await watchedPage(browser, { javaScriptEnabled });
    await page.goto(`${url}/buying`);
    const concrete = page.locator('.stock', { hasText: 'Concrete mix' });
    expect(await concrete.textContent()).toContain('3 bags in the yard');
    const line = page.locator('.buy', { hasText: 'Order' }).filter({ hasText: 'Concrete mix' }).first();
    await line.locator('summary').click();
    await line.locator('[name=quantity]').fill('4');
    await line.locator('[name=price]').fill('28.80');
    await line.getByRole('button', { name: /^Bought/ }).click();
    await page.getByText(/^Concrete mix, 25 kg bought, expected on /).waitFor();
    expect(await concrete.textContent()).toContain('; 4 more on Wed 7 Apr');
    await page.getByRole('button', { name: 'Arrived: 4 bags of Concrete mix, 25 kg' }).click();
    await page.getByText('Concrete mix, 25 kg arrived.', { exact: true }).waitFor();
    expect(await concrete.textContent()).toContain('7 bags in the yard');
    await page.getByRole('button', { name: 'Undo: Concrete mix, 25 kg arrived' }).click();
    await page.getByText('Undone: Concrete mix, 25 kg arrived.', { exact: true }).waitFor();
    expect(await concrete.textContent()).toContain('3 bags in the yard');
    expect(complaints).toEqual([]);
  });

  test('what is past its keeping days is said first, and gone once it is counted out', async () => {
    const url = await served(await demoScreens());
    const { page, complaints } = await watchedPage(browser, { javaScriptEnabled });
    await page.goto(`${url}/buying`);
    await page.click('text="Concrete mix, 25 kg"');
    const concrete = page.locator('.stock:target');
    expect(await concrete.textContent()).toContain('1 bag came Mon 23 Nov and keeps 120 days: check it before use.');
    await concrete.locator('summary').click();
    await concrete.locator('[name=counted]').fill('2');
    await concrete.getByRole('button', { name: /^Save count/ }).click();
    await page.getByText('Concrete mix, 25 kg counted: 2 in the yard, not 3.', { exact: true }).waitFor();
    expect(await page.textContent('main')).not.toContain('Past its shelf life');
    expect(complaints).toEqual([]);
  });

  test('a wrong number is said at its field, and what was typed stays', async () => {
    const url = await served(await demoScreens());
    const { page, complaints } = await watchedPage(browser, { javaScriptEnabled });
    await page.goto(`${url}/buying`);
    const line = page.locator('.buy', { hasText: 'Order' }).first();
    await line.locator('summary').click();
    await line.locator('[name=quantity]').fill('-2');
    await line.locator('[name=price]').fill('12.5');
    await line.getByRole('button', { name: /^Bought/ }).click();
    await page.waitForSelector('.form-errors');
    expect(await line.locator('.error').textContent()).toContain('"-2" is not a weight');
    expect(await line.locator('[name=quantity]').inputValue()).toBe('-2');
    expect(await line.locator('[name=price]').inputValue()).toBe('12.5');
    // The browser itself writes an answer of 422 to its console; nothing else may be there.
    expect(complaints.filter((text) => !text.includes('422'))).toEqual([]);
  });
});

test('what is still to be bought can be printed: the list is on the paper, its buttons are not', async () => {
  const url = await served(await demoScreens());
  const { page } = await watchedPage(browser, { viewport: { width: 794, height: 1123 } });
  await page.goto(`${url}/buying`);
  await page.emulateMedia({ media: 'print' });
  const line = page.locator('.buy', { hasText: 'Order by' }).first();
  expect(await line.locator('.buy-what').isVisible()).toBe(true);
  expect(await line.locator('button').first().isVisible()).toBe(false);
});
