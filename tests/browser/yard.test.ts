import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { launchBrowser } from '../support/browser.ts';
import { demoScreens, screensOver } from '../support/screens.ts';
import { served, watchedPage } from '../support/served-screens.ts';
import { smallYard } from '../support/small-yard.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());

const sideways = (page: Page) => page.evaluate('document.documentElement.scrollWidth - window.innerWidth');

describe.each([
  [390, true],
  [1280, false],
])('at %i px, script: %s', (width, javaScriptEnabled) => {
  const options = { viewport: { width, height: 844 }, javaScriptEnabled };

  test('four moulds are added at once, from the page of the yard on', async () => {
    const url = await served(await screensOver());
    const { page, complaints } = await watchedPage(browser, options);
    await page.goto(`${url}/`);
    await page.getByRole('link', { name: 'Your yard' }).click();
    expect(await page.textContent('h1')).toBe('Your yard is ready to give dates.');
    await page.locator('.yard-sections').getByRole('link', { name: 'Moulds' }).click();
    await page.getByRole('link', { name: 'Add moulds' }).click();
    await page.getByLabel('How many').fill('4');
    await page.getByLabel('Painted on them').fill('1100');
    await page.getByLabel('They make').selectOption({ label: 'Panel 900' });
    await page.getByRole('button', { name: 'Add the moulds' }).click();
    await page.waitForSelector('text=1100 no. 1 to 1100 no. 4 added.');
    expect(await page.textContent('h1')).toBe('6 moulds in use: 2 of 900 and 4 of 1100.');
    expect(await sideways(page)).toBeLessThanOrEqual(0);
    expect(complaints).toEqual([]);
  });

  test('panels typed before there is a mix are there again once it is added', async () => {
    const url = await served(
      await screensOver(smallYard({ castings: [], mixes: [], moulds: [], kits: [], orders: [], finished: [] })),
    );
    const { page, complaints } = await watchedPage(browser, options);
    await page.goto(`${url}/yard/panels/new`);
    await page.getByLabel('Lengths').fill('600, 900');
    await page.getByLabel('High').fill('200');
    await page.getByLabel('Thick').fill('35');
    await page.getByRole('button', { name: 'Add a mix' }).click();
    await page.getByText('Once it is added you are back at what you cast').waitFor();
    await page.getByRole('link', { name: 'Start from a fast-setting mix' }).click();
    await page.getByRole('heading', { name: 'Add a mix, starting from a fast-setting mix.' }).waitFor();
    await page.getByRole('button', { name: 'Add it' }).first().click();
    await page.getByText('Fast-setting mix added.', { exact: true }).waitFor();
    expect(await page.getByLabel('Lengths').inputValue()).toBe('600, 900');
    await page.getByRole('button', { name: 'Add it' }).first().click();
    await page.getByText('Panel 600, Panel 900 added to what is cast.', { exact: true }).waitFor();
    expect(await sideways(page)).toBeLessThanOrEqual(0);
    expect(complaints).toEqual([]);
  });

  test('hours are changed with what it moves in sight, and what was typed stays', async () => {
    const url = await served(await screensOver());
    const { page, complaints } = await watchedPage(browser, options);
    await page.goto(`${url}/yard/hours`);
    await page.getByRole('link', { name: /^Saturdays 8:00 to 12:00/ }).click();
    await page.getByText('Saturday', { exact: true }).click();
    await page.getByText('Sunday', { exact: true }).click();
    await page.getByLabel('People').fill('2');
    await page.getByRole('button', { name: 'Save' }).click();
    await page.waitForSelector('.effect');
    const effect = await page.textContent('.effect');
    expect(effect).toContain('This moves one promise. Nothing has been saved yet.');
    expect(effect).toMatch(/School garden\s*: Sat 10 Apr to Sat 17 Apr, 7 days later/);
    expect(await page.isChecked('[name="days:SU"]')).toBe(true);
    expect(await page.isChecked('[name="days:SA"]')).toBe(false);
    expect(await page.inputValue('#crew')).toBe('2');
    expect(await sideways(page)).toBeLessThanOrEqual(0);
    await page.locator('.effect').getByRole('button', { name: 'Save anyway' }).click();
    await page.waitForSelector('text=Hours changed.');
    expect(await page.textContent('main')).toContain('Sundays 8:00 to 12:00, 2 people.');
    await page.getByRole('button', { name: 'Undo: Hours changed' }).click();
    await page.waitForSelector('text=Saturdays 8:00 to 12:00, 1 person.');
    expect(complaints).toEqual([]);
  });

  test('going back from the effect leaves everything as it was', async () => {
    const url = await served(await screensOver());
    const { page } = await watchedPage(browser, options);
    await page.goto(`${url}/yard/hours`);
    await page.getByRole('button', { name: /^Remove Saturdays 8:00 to 12:00/ }).click();
    await page.waitForSelector('.effect');
    await page.getByRole('link', { name: 'Cancel' }).click();
    await page.waitForSelector('text=Saturdays 8:00 to 12:00, 1 person.');
  });

  test('removal of what is in use is refused with what uses it', async () => {
    const inMould = [{ mould: '900 no. 1', casting: 'panel-900', filledAt: '2027-04-08T08:00:00+01:00' }];
    const url = await served(await screensOver(smallYard({ inMould })));
    const { page } = await watchedPage(browser, options);
    await page.goto(`${url}/yard/moulds`);
    await page.getByRole('button', { name: 'Remove 900 no. 1' }).click();
    await page.waitForSelector('h1:has-text("900 no. 1 can\'t be removed.")');
    expect(await page.textContent('.error')).toContain('900 no. 1 has a piece in it (Panel 900).');
    await page.getByRole('link', { name: 'Go back' }).click();
    await page.getByRole('link', { name: '900 no. 1' }).waitFor();
  });

  test('what could not be read is said at its field, and stays', async () => {
    const url = await served(await screensOver());
    const { page } = await watchedPage(browser, options);
    await page.goto(`${url}/yard/temperatures`);
    await page.getByLabel('January').fill('brisk');
    await page.getByLabel('February').fill('41 F');
    await page.getByRole('button', { name: 'Save' }).click();
    await page.waitForSelector('.form-errors');
    expect(await page.textContent('#month-1-error')).toContain('"brisk" is not a temperature.');
    expect(await page.inputValue('#month-1')).toBe('brisk');
    expect(await page.inputValue('#month-2')).toBe('41 F');
    await page.goto(`${url}/yard/about`);
    await page.getByLabel('Name of the yard').fill('');
    await page.getByLabel('Time zone').fill('Europe/Nowhere');
    await page.getByRole('button', { name: 'Save' }).click();
    await page.waitForSelector('.form-errors');
    expect(await page.textContent('#name-error')).toBe('What is the yard called?');
    expect(await page.inputValue('#timeZone')).toBe('Europe/Nowhere');
  });
});

test('how long changing over takes is asked only for what the mould makes', async () => {
  const url = await served(await demoScreens());
  const { page } = await watchedPage(browser, { javaScriptEnabled: false });
  await page.goto(`${url}/yard/moulds/1200%20no.%203`);
  const minutes = page.getByLabel('Minutes to change over to Panel 600');
  expect(await page.getByLabel('Minutes to change over to Panel 900').isVisible()).toBe(true);
  expect(await minutes.isVisible()).toBe(false);
  await page.getByLabel('Panel 600', { exact: true }).check();
  await minutes.fill('soon');
  await page.getByRole('button', { name: 'Save' }).click();
  await page.waitForSelector('.form-errors');
  expect(await minutes.inputValue()).toBe('soon');
});

test('what was wrong is listed with the names of the fields, in their order on the page', async () => {
  const url = await served(await screensOver());
  const { page } = await watchedPage(browser);
  await page.goto(`${url}/yard/about`);
  await page.getByLabel('Name of the yard').fill('');
  await page.getByLabel('Money').fill('shells');
  await page.getByLabel('Mixers').fill('two');
  await page.getByLabel('Hours ahead that a session is fixed').fill('soon');
  await page.getByRole('button', { name: 'Save' }).click();
  await page.waitForSelector('.form-errors');
  expect(await page.locator('.form-errors a').allTextContents()).toEqual([
    'Name of the yard: What is the yard called?',
    'Money: Which currency? Its three letters, as in EUR, GBP or USD.',
    'Hours ahead that a session is fixed: How many hours? Write a whole number, 0 to 336.',
    'Mixers: How many mixers? Write a whole number, 0 to 50.',
  ]);
  await page.getByRole('link', { name: /^Mixers/ }).click();
  expect(await page.evaluate('document.activeElement.id')).toBe('mixers');
});

test('what is wrong with a group of answers belongs to the group', async () => {
  const url = await served(await screensOver());
  const { page } = await watchedPage(browser);
  await page.goto(`${url}/yard/hours/new`);
  await page.getByRole('button', { name: 'Save' }).click();
  await page.waitForSelector('.form-errors');
  expect(await page.locator('.form-errors a').first().textContent()).toBe('On: Tick at least one day.');
  const group = page.getByRole('group', { name: 'On', exact: true });
  expect(await group.getAttribute('aria-describedby')).toBe('days-error');
  expect(await page.textContent('#days-error')).toBe('Tick at least one day.');
});

test('a rule shows its next dates as it is typed', async () => {
  const url = await served(await screensOver());
  const { page, complaints } = await watchedPage(browser);
  await page.goto(`${url}/yard/hours/new`);
  await page.getByText('Another pattern (repeat rule)').click();
  await page.getByLabel('Rule').fill('FREQ=MONTHLY;BYDAY=1SA');
  await page.getByLabel('Rule').press('Tab');
  await page.waitForSelector(
    '#rule-dates:has-text("It gives Sat 1 May, Sat 5 Jun, Sat 3 Jul, Sat 7 Aug and Sat 4 Sep.")',
  );
  expect(complaints).toEqual([]);
});
