import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { launchBrowser } from '../support/browser.ts';
import { demoScreens } from '../support/screens.ts';
import { served, watchedPage } from '../support/served-screens.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const violations = async (page: Page): Promise<unknown[]> => {
  await page.evaluate(axe);
  return page.evaluate('axe.run().then(({ violations }) => violations.map(({ id, nodes }) => [id, nodes[0].html]))');
};
const sideways = (page: Page) => page.evaluate('document.documentElement.scrollWidth - window.innerWidth');

const choose = async (page: Page, name: string, content: string | Buffer) => {
  await page.setInputFiles('#file', { name, mimeType: 'text/plain', buffer: Buffer.from(content) });
  await page.click('text="Check it"');
};

describe.each([
  ['with script', true],
  ['without script', false],
])('%s', (_how, javaScriptEnabled) => {
  test('a yard file is saved, changed, looked at, read in and taken back', async () => {
    const url = await served(await demoScreens());
    const { page, complaints } = await watchedPage(browser, { javaScriptEnabled, acceptDownloads: true });
    await page.goto(`${url}/yard/files`);
    const [download] = await Promise.all([page.waitForEvent('download'), page.click('text="Save the yard file"')]);
    expect(download.suggestedFilename()).toBe('larch-row-yard-2027-04-05.yard.json');
    const saved = readFileSync((await download.path()) ?? '', 'utf8');
    const file = JSON.parse(saved);
    file.moulds = file.moulds.filter(({ id }: { id: string }) => id !== '600 no. 1');
    await choose(page, 'yard.json', JSON.stringify(file));
    await page.waitForSelector('h1:has-text("This yard file would change this: 1 gone. Nothing is loaded yet.")');
    expect(await page.textContent('.difference')).toContain('1 gone: 600 no. 1.');
    await page.click('text="Cancel"');
    await choose(page, 'yard.json', JSON.stringify(file));
    await page.click('text="Load it"');
    await page.waitForSelector('.notice:has-text("Yard file loaded.")');
    await page.goto(`${url}/moulds`);
    expect(await page.textContent('main')).not.toContain('600 no. 1');
    await page.goto(`${url}/yard/files?done=1`);
    await page.click('text="Undo"');
    await page.waitForSelector('text=/undone|taken back/i');
    await page.goto(`${url}/moulds`);
    expect(await page.textContent('main')).toContain('600 no. 1');
    expect(complaints).toEqual([]);
  });
});

test.each([320, 390, 1280])(
  'what a file would change, and what is wrong with one, fits at %i px and axe finds nothing',
  async (width) => {
    const url = await served(await demoScreens());
    const { page } = await watchedPage(browser, { viewport: { width, height: 844 } });
    await page.goto(`${url}/yard/files`);
    const long = 'a-panel-with-a-name-that-is-far-too-long-for-the-screen-of-a-phone';
    await choose(page, 'orders.csv', `order,customer,asked for,wanted\n,Ann,2 x Planter; 1 x ${long},31.2.2027\n`);
    await page.waitForSelector('.form-errors');
    expect(await page.textContent('.form-errors')).toContain('row 2, column wanted: 31 Feb 2027 does not exist');
    expect(await sideways(page)).toBeLessThanOrEqual(0);
    expect(await violations(page)).toEqual([]);
    await choose(
      page,
      'orders.csv',
      `order,customer,asked for,note\n,Ann,2 x Planter,${long}\n27-010,Bea,1 x Planter,${long}\n`,
    );
    await page.waitForSelector('text="Load it"');
    expect(await sideways(page)).toBeLessThanOrEqual(0);
    expect(await violations(page)).toEqual([]);
  },
);
