import { fileURLToPath } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { loadYardFile } from '../../db/stores/yard-store.ts';
import { launchBrowser } from '../support/browser.ts';
import { HandWork } from '../support/hand-work.ts';
import { DEMO_NOW, demoScreens } from '../support/screens.ts';
import { served, watchedPage } from '../support/served-screens.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());

/** With SCREENSHOTS set the walk leaves a picture of each step for the README. */
const FOLDER = fileURLToPath(new URL('../../views/screenshots/', import.meta.url));

class Walk {
  #step = 0;
  constructor(
    private readonly page: Page,
    private readonly hand: HandWork,
  ) {}

  async look(): Promise<void> {
    this.#step++;
    if (process.env.SCREENSHOTS)
      await this.page.screenshot({ path: `${FOLDER}empty-${this.#step}.png`, fullPage: true });
  }

  /** To a section of the yard by its name, and to the form that adds to it. */
  async section(name: string, adding: string): Promise<void> {
    await this.hand.click('nav a:has-text("Your yard")');
    await this.hand.click(`main a:text-is("${name}")`);
    await this.hand.click(`main a:has-text("${adding}")`);
  }

  async save(button: string, notice: string): Promise<void> {
    await this.hand.click(`form.form .button.main:has-text("${button}")`);
    await this.page.waitForSelector(`.notice:has-text("${notice}")`);
  }

  async emptyYard(): Promise<void> {
    const { hand, page } = this;
    await hand.click('.demo-note a');
    await hand.type('#name', 'Hazel Lane');
    await hand.type('#timeZone', 'Europe/Dublin');
    await hand.click('text="Start an empty yard"');
    await page.waitForSelector('h1:has-text("Four things are missing for a first date")');
    await this.look();
  }

  async mix(): Promise<void> {
    await this.hand.click('main a:has-text("Next: mixes")');
    await this.hand.click('text="Start from a fast-setting mix"');
    await this.hand.type('#bagsThere', '40');
    await this.look();
    await this.save('Add it', 'added');
  }

  async panels(): Promise<void> {
    await this.section('What you cast', 'Add what you cast');
    await this.hand.type('#lengths', '600, 900, 1200');
    await this.hand.type('#height', '200');
    await this.hand.type('#thickness', '35');
    await this.save('Add it', 'Panel 600, Panel 900, Panel 1200 added');
    await this.look();
  }

  async moulds(): Promise<void> {
    for (const length of ['600', '900', '1200']) {
      await this.section('Moulds', 'Add moulds');
      await this.hand.type('#count', '2');
      await this.hand.type('#kind', length);
      await this.hand.choose('#casting', `Panel ${length}`);
      await this.hand.click('form.form .button.main');
      await this.page.waitForSelector('.notice');
    }
    await this.look();
  }

  async hours(): Promise<void> {
    await this.section('Hours worked', 'Add hours');
    await this.hand.click('label:has-text("Saturday")');
    await this.hand.time('#start', '0800AM');
    await this.hand.time('#end', '0200PM');
    await this.hand.click('form.form .button.main');
    await this.page.waitForSelector('.notice');
  }

  async kits(): Promise<void> {
    for (const [name, long, short] of [
      ['Planter 1200 x 600', 'Panel 1200', 'Panel 600'],
      ['Trough 900 x 600', 'Panel 900', 'Panel 600'],
    ] as const) {
      await this.section('Kits', 'Add a kit');
      await this.hand.type('#name', name);
      await this.hand.choose('#piece-0', long);
      await this.hand.type('#pieceCount-0', '2');
      await this.hand.choose('#piece-1', short);
      await this.hand.type('#pieceCount-1', '2');
      await this.hand.type('#packMinutes', '15');
      await this.save('Add it', `${name} added to the kits`);
    }
    await this.look();
  }
}

test('an empty yard is filled in part by part to its first date, by clicks and keys alone', {
  timeout: 120_000,
}, async () => {
  const screens = await demoScreens();
  const url = await served(screens);
  const { page, complaints } = await watchedPage(browser, { timezoneId: 'Europe/Dublin' });
  const hand = new HandWork(page);
  const walk = new Walk(page, hand);
  await page.goto(`${url}/`);
  await walk.emptyYard();
  await walk.mix();
  await walk.panels();
  await walk.moulds();
  await walk.hours();
  await walk.kits();
  await hand.click('nav a:has-text("Your yard")');
  await page.waitForSelector('h1:has-text("Your yard is ready to give dates.")');
  await walk.look();
  await hand.click('nav a:has-text("When?")');
  await hand.choose('#what', 'Planter 1200 x 600');
  await page.waitForSelector('#ready h1');
  await hand.click('text="Ask"');
  await page.waitForSelector('main h1');
  expect(await page.textContent('main h1')).toMatch(/ready \w{3} \d{1,2} \w{3}\.$/);
  expect(await page.textContent('main')).toContain('Rests on figures to check, of');
  await walk.look();
  const yard = await screens.database.read((tx) => loadYardFile(tx, DEMO_NOW));
  expect([yard.castings, yard.moulds, yard.mixes, yard.kits].map((list) => list.length)).toEqual([3, 6, 1, 2]);
  expect(yard.materials).toMatchObject([{ name: 'Fast-setting mortar, 25 kg', onHand: 40 }]);
  expect(yard.work).toMatchObject([{ rule: 'FREQ=WEEKLY;BYDAY=SA', start: '08:00', end: '14:00' }]);
  process.stdout.write(
    `From an empty yard to a first date: ${JSON.stringify({ clicks: hand.clicks, keys: hand.keys, seconds: Math.round(hand.seconds) })}\n`,
  );
  // Half an hour is what it may take; a hand needs a small part of it, and leaves the rest for reading and looking up.
  expect(hand.seconds).toBeLessThan(10 * 60);
  expect(complaints).toEqual([]);
});
