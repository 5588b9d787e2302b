import { readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { createApp } from '../../src/http/app.ts';
import { launchBrowser } from '../support/browser.ts';
import { DEMO_PAGES } from '../support/demo-pages.ts';
import { demoToLookAt } from '../support/demo-to-look-at.ts';
import { FRIDAY, fixedYard } from '../support/fixed-yard.ts';
import { plannedYard, saturday } from '../support/planned-yard.ts';
import { demoScreens, screensOn, screensOver } from '../support/screens.ts';
import { pageWatched, served, type WatchedPage, watchedPage } from '../support/served-screens.ts';
import { smallTargets } from '../support/small-targets.ts';
import { smallYard } from '../support/small-yard.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());
const demo = demoToLookAt();

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

interface Violation {
  id: string;
  impact: string | null;
  nodes: { html: string }[];
}

const violations = async (page: Page, options: object = {}): Promise<string[]> => {
  if (!(await page.evaluate('"axe" in window'))) await page.evaluate(axe);
  const found = await page.evaluate<Violation[]>(
    `axe.run(${JSON.stringify({ resultTypes: ['violations'], preload: false, ...options })}).then((result) => result.violations)`,
  );
  return found.map(({ id, impact, nodes }) => `${impact} ${id}: ${nodes.map(({ html }) => html).join(' ')}`);
};

/* Loading the styles anew for the one rule that reads them (that no page is locked to one side up) took a third of the time. */
test('no style asks which side of a phone is up', () => {
  const folder = new URL('../../views/assets/', import.meta.url);
  const styles = readdirSync(folder).filter((name) => name.endsWith('.css'));
  expect(styles.length).toBeGreaterThan(5);
  for (const name of styles) expect(readFileSync(new URL(name, folder), 'utf8'), name).not.toMatch(/orientation/);
});

/** What depends on the colours of a page; all else is the same in light and in dark. */
const OF_COLOURS = { runOnly: { type: 'tag', values: ['cat.color'] } };

/** What is folded as well: it is a page's too. */
const openAll = (page: Page): Promise<void> =>
  page.$$eval('details', (all) => {
    for (const one of all) one.open = true;
  });

describe('pages that are only looked at', () => {
  let watched: WatchedPage;
  beforeAll(async () => {
    watched = await pageWatched(browser);
    // Sent once for all pages: to send it anew for each took a fifth of all this.
    await watched.page.addInitScript(axe);
  });
  afterAll(() => watched.page.context().close());

  test.each(DEMO_PAGES)(
    '%s has nothing that axe finds in light or dark, targets of 48 px in the yard and 40 in the office, no scrolling sideways',
    async (path) => {
      const { page, complaints } = watched;
      complaints.length = 0;
      await page.emulateMedia({ colorScheme: 'light' });
      await page.setViewportSize({ width: 390, height: 844 });
      const answer = await page.goto(demo() + path);
      expect(answer?.status()).toBe(200);
      await openAll(page);
      const inYard = await page.$eval('body', (body) => body.classList.contains('yard'));
      expect(await smallTargets(page, inYard ? 48 : 40)).toEqual([]);
      for (const width of [320, 390, 1280]) {
        await page.setViewportSize({ width, height: 844 });
        const beyond = await page.evaluate('document.documentElement.scrollWidth - window.innerWidth');
        expect(beyond, `at ${width} px`).toBeLessThanOrEqual(0);
      }
      await page.setViewportSize({ width: 390, height: 844 });
      expect(await violations(page), 'in light').toEqual([]);
      await page.emulateMedia({ colorScheme: 'dark' });
      expect(await violations(page, OF_COLOURS), 'in dark').toEqual([]);
      expect(complaints).toEqual([]);
    },
  );
});

test.each(['light', 'dark'] as const)(
  'Today, with pieces to mend and work that is not written down, is as the other pages are, in %s',
  async (colorScheme) => {
    const inMould = [{ mould: '900 no. 1', casting: 'panel-900', filledAt: saturday('06:30') }];
    const yard = plannedYard({ yard: { ...plannedYard().yard, now: saturday('07:30') }, finished: [], inMould });
    const { database, post } = await screensOver(yard);
    await post('/today/stripped', { mould: '900 no. 1', cameOut: 'mend', reason: 'corner broken off' });
    const url = await served(screensOn(database, saturday('12:20')));
    const { page, complaints } = await watchedPage(browser, { colorScheme, viewport: { width: 320, height: 844 } });
    await page.goto(`${url}/today`);
    await openAll(page);
    expect(await page.locator('#late, #to-mend').count()).toBe(2);
    expect(await violations(page)).toEqual([]);
    expect(await page.evaluate('document.documentElement.scrollWidth - window.innerWidth')).toBeLessThanOrEqual(0);
    expect(await smallTargets(page, 48)).toEqual([]);
    expect(complaints).toEqual([]);
  },
);

test('what was just done and what was wrong have nothing that axe finds', async () => {
  const url = await served(await demoScreens());
  const { page } = await watchedPage(browser);
  await page.goto(`${url}/moulds`);
  const row = page.locator('.mould', { hasText: '600 no. 1' });
  await row.locator('.mould-tile').click();
  await row.getByText('Damaged …').click();
  await row.getByRole('button', { name: 'Mark damaged: 600 no. 1' }).click();
  await page.waitForSelector('.notice');
  expect(await violations(page)).toEqual([]);
  await page.goto(`${url}/orders/new`);
  await page.click('.form .button.main');
  await page.waitForSelector('.form-errors');
  expect(await violations(page)).toEqual([]);
});

test('what is fixed, and a list of changes with dates that moved, have nothing that axe finds', async () => {
  const { friday } = await fixedYard();
  const url = await served({ app: createApp({ database: friday.database, now: () => FRIDAY }) });
  const { page, complaints } = await watchedPage(browser);
  await page.goto(`${url}/today`);
  expect(await page.textContent('.fixed-session')).toContain('Saturday is fixed.');
  expect(await violations(page)).toEqual([]);
  expect(await smallTargets(page, 48)).toEqual([]);
  await page.goto(`${url}/moulds`);
  const row = page.locator('.mould', { hasText: '900 no. 2' });
  await row.locator('.mould-tile').click();
  await row.getByText('Damaged …').click();
  await row.getByRole('button', { name: 'Mark damaged: 900 no. 2' }).click();
  await page.waitForSelector('.notice');
  expect(await page.textContent('.notice')).toContain('Saturday was fixed, but the mix at');
  expect(await violations(page)).toEqual([]);
  await page.goto(`${url}/changes`);
  expect(await page.textContent('.changes')).toContain('Saturday was fixed, but the mix at');
  expect(await violations(page)).toEqual([]);
  expect(await smallTargets(page, 40)).toEqual([]);
  expect(complaints).toEqual([]);
});

test('an effect before it is saved has nothing that axe finds', async () => {
  const url = await served(await screensOver());
  const { page } = await watchedPage(browser);
  await page.goto(`${url}/yard/hours`);
  await page.getByRole('button', { name: /^Remove Saturdays/ }).click();
  await page.waitForSelector('.effect');
  expect(await page.evaluate('document.activeElement.className')).toContain('effect');
  expect(await violations(page)).toEqual([]);
  expect(await smallTargets(page, 40)).toEqual([]);
});

test.each([
  ['/yard/panels/panel-1200', { '#fillMinutes': '20', '#prepMinutes': '90' }],
  ['/yard/kits/planter', { '#pieceCount-0': '8' }],
  ['/yard/mixes/thin', { '#coldMinutes': '900', '#warmMinutes': '600' }],
  ['/yard/stock/citric-acid', { '#onHand': '0', '#leadDays': '60' }],
  ['/yard/about', { '#clearUpMinutes': '120' }],
  ['/yard/temperatures', { '#month-4': '6', '#month-5': '5' }],
  ['/yard/temperatures/new', { '#celsius': '1' }],
])('%s with its effect in sight has nothing that axe finds', async (path, typed) => {
  const { page, complaints } = await watchedPage(browser, { viewport: { width: 320, height: 844 } });
  await page.goto(demo() + path);
  await openAll(page);
  for (const [field, text] of Object.entries(typed)) await page.fill(field, text);
  await page.click('form.form .button.main');
  await page.waitForSelector('.effect');
  expect(await page.textContent('.effect')).toMatch(/^This moves .*Nothing has been saved yet\./);
  for (const [field, text] of Object.entries(typed)) expect(await page.inputValue(field)).toBe(text);
  expect(await violations(page)).toEqual([]);
  expect(await page.evaluate('document.documentElement.scrollWidth - window.innerWidth')).toBeLessThanOrEqual(0);
  expect(complaints).toEqual([]);
});

test.each([
  ['/orders/new?what=kit%3Aplanter&number=9', { '#promisedOn': '4 Apr' }, 'form.form .button.main'],
  ['/orders/27-013', { '#promisedOn': 'tomorrow' }, '#give-date .button.main'],
  ['/orders/27-018', { '#promisedOn': 'tomorrow' }, '#give-date .button.main'],
])('%s asked about before it is saved has nothing that axe finds', async (path, typed, button) => {
  const screens = await demoScreens();
  await screens.post('/orders/27-018/cancel', {});
  const url = await served(screens);
  const { page, complaints } = await watchedPage(browser, { viewport: { width: 320, height: 844 } });
  await page.goto(url + path);
  for (const [field, text] of Object.entries(typed)) await page.fill(field, text);
  await page.click(button);
  await page.waitForSelector('.effect');
  expect(await page.textContent('.effect')).toContain('Nothing has been saved yet.');
  expect(await violations(page)).toEqual([]);
  expect(await smallTargets(page, 40)).toEqual([]);
  expect(await page.evaluate('document.documentElement.scrollWidth - window.innerWidth')).toBeLessThanOrEqual(0);
  expect(complaints).toEqual([]);
});

test('a removal that is refused has nothing that axe finds', async () => {
  const { page } = await watchedPage(browser);
  await page.goto(`${demo()}/yard/moulds`);
  await page.getByRole('button', { name: 'Remove 1200 no. 1' }).click();
  await page.waitForSelector('main .error');
  expect(await violations(page)).toEqual([]);
});

const OF_EMPTY_YARD = [
  '/panels',
  '/panels/new',
  '/moulds',
  '/moulds/new',
  '/mixes',
  '/mixes/new',
  '/kits',
  '/kits/new',
];
test('no page of an empty yard has anything that axe finds', async () => {
  const bare = { materials: [], mixes: [], castings: [], moulds: [], kits: [], orders: [], work: [] };
  const url = await served(await screensOver(smallYard(bare)));
  const { page } = await watchedPage(browser);
  for (const path of ['', ...OF_EMPTY_YARD, '/stock', '/hours', '/temperatures']) {
    await page.goto(`${url}/yard${path}`);
    expect([path, await violations(page)]).toEqual([path, []]);
    const over = await page.evaluate<number>('document.documentElement.scrollWidth - window.innerWidth');
    expect([path, Math.max(0, over)]).toEqual([path, 0]);
  }
});

test.each([
  ['/yard/panels/new', '#lengths', 'long'],
  ['/yard/panels/panel-900', '#cutLength-0', '9 m'],
  ['/yard/kits/planter', '#pieceCount-1', 'some'],
  ['/yard/stock/new', '#leadDays', 'soon'],
  ['/yard/stock/citric-acid', '#packPrice', '-5'],
  ['/yard/mixes/thin', '#cureHours', 'long'],
  ['/yard/moulds/new', '#count', 'many'],
  ['/yard/hours/new', '#until', '31 Feb'],
  ['/yard/temperatures', '#month-1', 'brisk'],
])('%s with something wrong in %s has nothing that axe finds', async (path, field, text) => {
  const { page } = await watchedPage(browser);
  await page.goto(demo() + path);
  await openAll(page);
  await page.fill(field, text);
  await page.click('form.form .button.main');
  await page.waitForSelector(`${field}-error`);
  expect(await page.inputValue(field)).toBe(text);
  expect(await violations(page)).toEqual([]);
  expect(await page.evaluate('document.documentElement.scrollWidth - window.innerWidth')).toBeLessThanOrEqual(0);
});

test('a name of one long word makes no page wider than a phone', async () => {
  const long = 'Wolfeschlegelsteinhausenbergerdorff'.repeat(2).slice(0, 55);
  const base = smallYard();
  const yard = smallYard({
    ...base,
    yard: { ...base.yard, name: long },
    materials: base.materials.map((one) => ({ ...one, name: `${long} ${one.id}`, supplier: long, leadDays: 3 })),
    mixes: base.mixes.map((one) => ({ ...one, name: long })),
    castings: base.castings.map((one) => ({ ...one, name: long })),
    moulds: base.moulds.map((one, index) => ({ ...one, id: `${long} ${index}` })),
    kits: base.kits.map((one) => ({ ...one, name: long })),
    orders: base.orders.map((one) => ({ ...one, customer: long })),
  });
  const url = await served(await screensOver(yard));
  const { page } = await watchedPage(browser, { viewport: { width: 320, height: 844 } });
  const days = [
    '/',
    '/today',
    '/today/sheet',
    '/orders',
    '/orders/27-001',
    '/orders/new',
    '/moulds',
    '/turns',
    '/buying',
  ];
  const parts = [
    '',
    '/about',
    '/panels',
    '/panels/panel-900',
    '/kits',
    '/kits/pair',
    '/moulds',
    '/mixes',
    '/mixes/thin',
  ];
  for (const path of [
    ...days,
    ...parts.map((part) => `/yard${part}`),
    '/yard/stock',
    '/yard/stock/rod',
    '/yard/guesses',
  ]) {
    await page.goto(url + path);
    const over = await page.evaluate<number>('document.documentElement.scrollWidth - window.innerWidth');
    expect([path, Math.max(0, over)]).toEqual([path, 0]);
  }
});

test('a yard that was begun with four answers, and answers that were refused, have nothing that axe finds', async () => {
  const screens = await demoScreens();
  const url = await served(screens);
  const { page, complaints } = await watchedPage(browser, { timezoneId: 'Europe/Dublin' });
  await page.goto(`${url}/begin/four`);
  await page.click('.form > .buttons .button.main');
  await page.waitForSelector('.form-errors');
  expect(await violations(page)).toEqual([]);
  for (const [field, text] of Object.entries({ length0: '900', moulds0: '4', bagPieces: '2', name: 'Hazel Lane' }))
    await page.fill(`#${field}`, text);
  await page.click('.form > .buttons .button.main');
  await page.waitForSelector('.notice:has-text("Hazel Lane begun")');
  for (const path of ['/', '/begin', '/begin/session', '/begin/session?made=5', '/yard/guesses', '/today/sheet']) {
    await page.goto(url + path);
    expect([path, await violations(page)]).toEqual([path, []]);
    expect([path, await smallTargets(page, 40)]).toEqual([path, []]);
    expect(await page.evaluate('document.documentElement.scrollWidth - window.innerWidth')).toBeLessThanOrEqual(0);
  }
  // What was refused says so on the console of the browser as well.
  expect(complaints.filter((complaint) => !complaint.includes('422'))).toEqual([]);
});
