import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { createApp } from '../../src/http/app.ts';
import { launchBrowser } from '../support/browser.ts';
import { FRIDAY, fixedYard } from '../support/fixed-yard.ts';
import { screensOver } from '../support/screens.ts';
import { served, watchedPage } from '../support/served-screens.ts';
import { smallYard } from '../support/small-yard.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());

/** Saturdays to 11:30 have time for two panels of the order that is there; one more on the same day pushes it. */
const tightYard = () =>
  screensOver(
    smallYard({
      work: [{ rule: 'FREQ=WEEKLY;BYDAY=SA', from: '2027-01-02', start: '08:00', end: '11:30' }],
      orders: [
        { id: '27-001', customer: 'School garden', due: '2027-04-10', lines: [{ kit: 'pair', quantity: 1 }] },
        { id: '27-002', customer: 'Pat Dunne', due: '2027-04-17', lines: [{ kit: 'pair', quantity: 3 }] },
      ],
    }),
  );

describe.each([
  ['with script', true],
  ['without script', false],
])('%s', (_how, javaScriptEnabled) => {
  test('a date says what holds it, and a day that is wanted what it would push', async () => {
    const url = await served(await tightYard());
    const { page, complaints } = await watchedPage(browser, { javaScriptEnabled });
    await page.setViewportSize({ width: 1280, height: 1600 });
    await page.goto(`${url}/?what=casting%3Apanel-900&number=1`);
    if (!javaScriptEnabled) await page.click('text="Ask"');
    // What holds it is found out for whoever has it on the screen, or without script follows the link.
    if (!javaScriptEnabled) await page.click('#sooner a:has-text("What is it held up by?")');
    await page.waitForSelector('#sooner >> text=One more session on Fri 9 Apr');
    await page.fill('#wantedOn', '2027-04-10');
    if (!javaScriptEnabled) await page.click('text="Ask"');
    await page.waitForSelector('.chosen >> text=later.');
    expect(await page.textContent('.chosen')).toMatch(
      /^Sat 10 Apr could be kept, but .*: Sat \d+ Apr to Sat \d+ \w+, \d+ days later\./,
    );
    await page.click('text="Take order"');
    await page.waitForURL(/\/orders\/new/);
    expect(await page.inputValue('#wantedOn')).toBe('2027-04-10');
    expect(complaints).toEqual([]);
  });

  test('a late order says what holds it', async () => {
    const url = await served(await tightYard());
    const { page, complaints } = await watchedPage(browser, { javaScriptEnabled });
    await page.goto(`${url}/orders/27-002`);
    if (!javaScriptEnabled) await page.click('text="Find out what would bring it forward"');
    await page.waitForSelector('li:has-text("sooner.")');
    expect(await page.textContent('main')).toMatch(
      /One more session on Fri 9 Apr, 8:00 to 11:30: Sat \d+ \w+, \d+ days sooner\./,
    );
    expect(complaints).toEqual([]);
  });

  test('which mould to build next is found out where it is asked', async () => {
    const url = await served(await tightYard());
    const { page, complaints } = await watchedPage(browser, { javaScriptEnabled });
    await page.goto(`${url}/moulds`);
    await page.click('#next-mould a');
    await page.waitForSelector('#next-mould >> text=/mould/ >> nth=1');
    expect(await page.textContent('#next-mould')).not.toContain('Find out');
    expect(complaints).toEqual([]);
  });

  test('Saturday is planned anew and that is undone from the list of changes', async () => {
    const { friday } = await fixedYard();
    const app = createApp({ database: friday.database, now: () => FRIDAY });
    const url = await served({ app });
    const { page, complaints } = await watchedPage(browser, { javaScriptEnabled });
    await page.goto(`${url}/today`);
    await page.getByText('Saturday is fixed.').click();
    await page.click('text="Replan Saturday"');
    await page.waitForSelector('.notice >> text=Sat 10 Apr replanned.');
    await page.goto(`${url}/orders`);
    await page.click('text="Changes"');
    await page.click('text="Undo"');
    await page.waitForSelector('.notice >> text=Undone: Sat 10 Apr replanned.');
    expect(await page.textContent('.changes')).toContain('This was taken back.');
    await page.goto(`${url}/today`);
    expect(await page.textContent('main')).toContain('Saturday is fixed.');
    expect(complaints).toEqual([]);
  });
});
