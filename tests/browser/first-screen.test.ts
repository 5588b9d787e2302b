import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { launchBrowser } from '../support/browser.ts';
import { demoSaturday } from '../support/demo-saturday.ts';
import { screensOn } from '../support/screens.ts';
import { served, watchedPage } from '../support/served-screens.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());

const PHONE = { width: 390, height: 844 };

/* Set-ups from 8:10, mixing from 8:35 to 9:05, and so on; of which nothing is recorded. */
test('on a phone the button of what is due is on the first screen, all that is needed at once on two', async () => {
  const { database, context } = await demoSaturday();
  for (const clock of ['08:15', '08:40', '10:02']) {
    const url = await served(screensOn(database, context(clock).now));
    const { page, complaints } = await watchedPage(browser, { viewport: PHONE });
    await page.goto(`${url}/today`);
    const due = page.locator('.step[data-due]');
    const tap = await due.locator('.step-content .button.plain').first().boundingBox();
    expect(tap && [clock, tap.y + tap.height <= PHONE.height, tap.height >= 48]).toEqual([clock, true, true]);
    const atHand = await page.locator('.at-hand').boundingBox();
    expect(atHand && atHand.y + atHand.height).toBeLessThan(2000);
    expect(await page.locator('.session-strip:visible').count()).toBe(1);
    expect(complaints).toEqual([]);
    await page.close();
  }
});
