import { existsSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Browser, BrowserType, Locator, Page } from 'playwright-core';
import { demoAt } from '../support/demo-saturday.ts';
import { DEMO_NOW } from '../support/screens.ts';
import { fetched } from './fetched.ts';
import { lookingAtDemo } from './served-demo.ts';
import type { Row } from './table.ts';

/** Debian's; `apt-get install firefox-esr`. */
const FIREFOX = '/usr/bin/firefox-esr';

/** The last that drives Firefox 140 by WebDriver BiDi: later ones send it what it does not know. */
const DRIVER_VERSION = '1.55.1';

/** The forms of Today that say that a step was done. */
const DONE = ['prepared', 'coated', 'poured', 'stripped', 'packed']
  .map((what) => `form[action="/today/${what}"]`)
  .join();

const SCREENS = { 'on a phone': { width: 390, height: 844 }, 'on a desk': { width: 1280, height: 800 } };

/** A job of the yard walked from its first page: where it came to, in the page's own words. */
type Job = (page: Page, url: string, setClock: (clock: string) => void) => Promise<string>;

const firstLine = async (page: Page): Promise<string> => (await page.textContent('main h1'))?.trim() ?? '';

const orderTaken: Job = async (page, url) => {
  await page.goto(`${url}/`);
  await page.selectOption('#what', { label: 'Planter 1200 x 600, two courses' });
  await page.fill('#number', '2');
  await page.locator('#ready h1', { hasText: '2 ×' }).waitFor();
  const told = await page.textContent('#ready h1');
  await page.getByText('Take order', { exact: true }).first().click();
  await page.locator('#customer').fill('Brid Casey');
  await page.fill('#wantedOn', 'next Saturday');
  await page.click('.buttons .button.main');
  await page.waitForURL(/orders\/27-\d+\?/);
  return `${told?.trim()} Taken: ${await firstLine(page)}`;
};

const mouldDamaged: Job = async (page, url) => {
  await page.goto(`${url}/moulds`);
  const mould = page.locator('.mould', { hasText: '600 no. 1' });
  await mould.locator('.mould-tile').click();
  await mould.getByText('Damaged …').click();
  await mould.locator('[name=note]').fill('Base split');
  await mould.getByRole('button', { name: 'Mark damaged: 600 no. 1' }).click();
  await page.locator('.notice').waitFor();
  const marked = await firstLine(page);
  await page.getByRole('button', { name: 'Undo: 600 no. 1 marked damaged' }).click();
  await page.getByText('Undone: 600 no. 1 marked damaged.').waitFor();
  return `${marked} Undone: ${await firstLine(page)}`;
};

/** The tap of the first step that is over by then, in sight: none of those that are under way. */
const tapOver = async (page: Page, clock: string): Promise<Locator | null> => {
  for (const step of await page
    .locator('.steps > .step')
    .filter({ has: page.locator(DONE) })
    .all()) {
    const until = (await step.locator('.step-time').first().textContent())?.split(' to ').at(-1)?.trim() ?? '';
    const tap = step.locator(DONE).locator('button:enabled').first();
    if (until.padStart(5, '0') > clock || (await tap.count()) === 0) continue;
    for (const fold of await step.locator('xpath=ancestor::details[not(@open)]/summary').all()) await fold.click();
    return tap;
  }
  return null;
};

const EVERY_MINUTES = 10;
const CLOCKS = Array.from({ length: 34 }, (_, tick) => {
  const minutes = 8 * 60 + 1 + tick * EVERY_MINUTES;
  return [Math.floor(minutes / 60), minutes % 60].map((part) => String(part).padStart(2, '0')).join(':');
});

/** A Saturday by its own taps: every ten minutes all that is over is said to be done, one step after another. */
const poursWorked: Job = async (page, url, setClock) => {
  const done: string[] = [];
  for (const clock of CLOCKS) {
    setClock(clock);
    await page.goto(`${url}/today`);
    for (let tap = await tapOver(page, clock); tap !== null; tap = await tapOver(page, clock)) {
      const name = (await tap.getAttribute('aria-label')) ?? '';
      await tap.click();
      await page.locator('.notice, .form-errors').first().waitFor();
      const faults = page.locator('.form-errors');
      if ((await faults.count()) > 0) throw new Error(`${name}: ${await faults.first().textContent()}`);
      done.push(name);
      await page.goto(`${url}/today`);
    }
  }
  const batches = done.filter((name) => name.startsWith('Poured')).length;
  return `${done.length} steps, ${batches} of them batches. ${await firstLine(page)}`;
};

const JOBS: readonly { job: string; walk: Job; from: string }[] = [
  { job: 'an order is taken, its date seen', walk: orderTaken, from: DEMO_NOW },
  { job: 'a mould is marked damaged', walk: mouldDamaged, from: DEMO_NOW },
  { job: "a day's pours are worked", walk: poursWorked, from: demoAt('06:00') },
];

const walked = async (
  browser: Browser,
  viewport: { width: number; height: number },
  walk: (page: Page) => Promise<string>,
) => {
  const page = await browser.newPage({ viewport });
  const complaints: string[] = [];
  page.on('console', (message) => {
    if (['error', 'warning'].includes(message.type())) complaints.push(message.text());
  });
  page.on('pageerror', (error) => complaints.push(error.message));
  try {
    return [await walk(page), ...complaints.map((one) => `Firefox says: ${one}`)].join(' ');
  } catch (fault) {
    return `not done: ${String(fault).slice(0, 400)}`;
  } finally {
    // What is still being asked for is answered first.
    await page.goto('about:blank');
    await page.close();
  }
};

const launchFirefox = (): Promise<Browser> => {
  if (!existsSync(FIREFOX)) throw new Error(`There is no ${FIREFOX}: apt-get install firefox-esr`);
  const driver = createRequire(import.meta.url)(fetched('playwright-core', DRIVER_VERSION));
  return (driver as { _bidiFirefox: BrowserType })._bidiFirefox.launch({ executablePath: FIREFOX });
};

/** The three main jobs of the demo, walked in Firefox on a phone and on a desk; `only` is a word of the one that is. */
export const firefoxRows = async (only = ''): Promise<Row[]> => {
  const browser = await launchFirefox();
  const rows: Row[] = [];
  try {
    for (const { job, walk, from } of JOBS.filter((one) => one.job.includes(only)))
      for (const [way, viewport] of Object.entries(SCREENS)) {
        let now = from;
        const setClock = (clock: string) => {
          now = demoAt(clock);
        };
        const figure = await lookingAtDemo((url) => walked(browser, viewport, (page) => walk(page, url, setClock)), {
          from,
          now: () => now,
        });
        rows.push({ what: `${job}, ${way}`, figure, aim: '' });
      }
    return rows;
  } finally {
    await browser.close();
  }
};
