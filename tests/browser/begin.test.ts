import { fileURLToPath } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { launchBrowser } from '../support/browser.ts';
import { HandWork } from '../support/hand-work.ts';
import { printedText } from '../support/printed-text.ts';
import { demoScreens } from '../support/screens.ts';
import { sentAsShown } from '../support/sent-as-shown.ts';
import { served, watchedPage } from '../support/served-screens.ts';
import { sheetsOf } from '../support/sheets-of.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());

/** With SCREENSHOTS set the walk leaves a picture of each page for the README. */
const FOLDER = fileURLToPath(new URL('../../views/screenshots/', import.meta.url));
const photographer = (page: Page, wanted: boolean) => {
  let number = 0;
  return async () => {
    number++;
    if (wanted && process.env.SCREENSHOTS)
      await page.screenshot({ path: `${FOLDER}begin-${number}.png`, fullPage: true });
  };
};

const heading = (page: Page) => page.textContent('main h1');

/** From the demo to a sheet on the wall, by clicks and keys alone. */
const walk = async (page: Page, url: string, hand: HandWork, zone: string | null, look: () => Promise<void>) => {
  await page.goto(`${url}/`);
  await hand.click('.demo-note a');
  await page.waitForSelector('h1:has-text("Look round, or begin your own yard.")');
  await look();
  await hand.click('text="Give four answers"');
  await page.waitForSelector('h1:has-text("Four answers to a rough date.")');
  for (const [row, [length, moulds]] of [
    ['1200', '2'],
    ['900', '2'],
    ['600', '2'],
  ].entries()) {
    await hand.type(`#length${row}`, length!);
    await hand.type(`#moulds${row}`, moulds!);
  }
  await hand.type('#bagPieces', '2');
  await hand.type('#bagLength', '900');
  await hand.click('text="In between"');
  await hand.type('#people0', '2');
  await hand.type('#name', 'Hazel Lane');
  if (zone) await hand.type('#timeZone', zone);
  await look();
  await hand.click('.form .buttons .button.main');
  await page.waitForSelector('h1:has-text("By these figures a Saturday makes 11 panels in 2 turns.")');
  await look();
  await hand.type('#made', '8');
  await hand.click('text="Work out the times"');
  await page.waitForSelector('h1:has-text("With these times a Saturday makes 8 panels")');
  await look();
  await hand.click('text="Take these times"');
  await page.waitForSelector('.notice:has-text("Times changed so that a usual session makes 8.")');
  await look();
};

describe.each([
  ['with script', true, null],
  ['without script', false, 'Europe/Dublin'],
])('%s', (_how, javaScriptEnabled, zone) => {
  test('from the demo to a first date, a first order and a sheet on the wall', { timeout: 90_000 }, async () => {
    const url = await served(await demoScreens());
    const { page, complaints } = await watchedPage(browser, { javaScriptEnabled, timezoneId: 'Europe/Dublin' });
    const hand = new HandWork(page);
    const look = photographer(page, javaScriptEnabled);
    await walk(page, url, hand, zone, look);
    expect(await heading(page)).toMatch(/: ready \w{3} \d{1,2} \w{3}\.$/);
    expect(await page.textContent('#ready')).toContain('Rests on figures to check, of the bags and the mix');
    const toFirstDate = { clicks: hand.clicks, keys: hand.keys, seconds: Math.round(hand.seconds) };
    process.stdout.write(`From the demo to a first date, ${_how}: ${JSON.stringify(toFirstDate)}\n`);
    // Few enough for five minutes, reading and thinking included.
    expect(hand.clicks).toBeLessThanOrEqual(20);
    expect(hand.keys).toBeLessThanOrEqual(60);

    await hand.type('#number', '4');
    await hand.click('text="Take order"');
    await page.waitForSelector('h1:has-text("Take an order.")');
    await hand.type('#customer', 'School garden');
    await hand.click('.form .button.main:not(.unseen)');
    await page.waitForSelector('h1:has-text("School garden: ready")');
    expect(await page.textContent('main')).toContain('Rests on figures to check, of the bags and the mix');
    await look();
    await hand.click('nav a:has-text("Today")');
    await hand.click('text="A sheet for the wall, to print"');
    await page.waitForSelector('h1:has-text("Saturday sheet: Sat 10 Apr, 8:00 to 14:00, 4 pieces.")');
    await look();
    expect(sheetsOf(await page.pdf({ format: 'A4' }))).toBe(1);
    expect(complaints).toEqual([]);
  });
});

test('a full Saturday of three people, twelve moulds and 37 pieces is two sheets, in letters that can be read', {
  timeout: 90_000,
}, async () => {
  const screens = await demoScreens();
  const url = await served(screens);
  await screens.post('/begin/four', {
    ...{ length0: '900', moulds0: '12', bagPieces: '2', coldCelsius: '10 C', coldMinutes: '180', warmCelsius: '20 C' },
    ...{ warmMinutes: '90', season: 'warm', 'days0:SA': 'yes', from0: '08:00', to0: '17:00', people0: '3' },
    ...{ name: 'Hazel Lane', timeZone: 'Europe/Dublin', height: '200 mm', thickness: '35 mm', system: 'metric' },
  });
  for (const name of ['Plasticiser', 'Citric acid', 'Glass fibre, chopped'])
    await screens.post('/yard/stock/new', { name, unit: 'g', onHand: '50000' });
  const mix = sentAsShown(await (await screens.get('/yard/mixes/panel-mix')).text());
  const parts = ['plasticiser', 'citric-acid', 'glass-fibre-chopped'].flatMap((id, row) => [
    [`part-${row + 1}`, id],
    [`partQuantity-${row + 1}`, '57'],
  ]);
  await screens.post('/yard/mixes/panel-mix', { ...mix, ...Object.fromEntries(parts), water: '4.7 l' });
  await screens.post('/orders', { what0: 'casting:panel-900', quantity0: '200', customer: 'Allotments', slip: 'yes' });
  const { page } = await watchedPage(browser);
  await page.goto(`${url}/today/sheet`);
  expect(Number(/(\d+) pieces/.exec((await heading(page)) ?? '')?.[1])).toBeGreaterThan(20);
  // All batches are alike: what goes into one is said once.
  expect(await page.textContent('.sheet-recipe')).toContain('1 bag; 4.7 l water; 57 g Plasticiser; 57 g Citric acid');
  expect(await page.textContent('.sheet-rows')).not.toContain('Plasticiser');
  // It was one, since the browser made all of it smaller: a third column lay beside the sheet.
  const sheets = await printedText(await page.pdf({ format: 'A4' }));
  expect(sheets).toHaveLength(2);
  expect(Math.min(...sheets.flat().map(({ height }) => height))).toBeGreaterThanOrEqual(7.9);
});
