import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { launchBrowser } from '../support/browser.ts';
import { plannedYard, saturday } from '../support/planned-yard.ts';
import { screensOn, screensOver } from '../support/screens.ts';
import { served, watchedPage } from '../support/served-screens.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());

const at = (now: string) => screensOver(plannedYard({ yard: { ...plannedYard().yard, now }, finished: [] }));

describe.each([
  ['with script', true],
  ['without script', false],
])('%s', (_how, javaScriptEnabled) => {
  test('a session is called off, a promise moves, and that is undone', async () => {
    const url = await served(await at('2027-04-08T09:00:00+01:00'));
    const { page, complaints } = await watchedPage(browser, { javaScriptEnabled });
    await page.goto(`${url}/today`);
    expect(await page.textContent('h1')).toContain('Next session Sat 10 Apr, 8:00 to 12:00');
    await page.getByText('When the hours are not as usual').click();
    await page.getByRole('button', { name: 'No work on Sat 10 Apr' }).click();
    await page.waitForSelector('.notice');
    expect(await page.textContent('.notice')).toMatch(/School garden\s*: Sat 10 Apr to Sat 17 Apr, 7 days later/);
    expect(await page.textContent('h1')).toContain('Next session Sat 17 Apr');
    await page.locator('.notice').getByRole('button', { name: 'Undo: No work on Sat 10 Apr' }).click();
    await page.waitForSelector('text=Undone: No work on Sat 10 Apr.');
    expect(await page.textContent('h1')).toContain('Next session Sat 10 Apr');
    expect(complaints).toEqual([]);
  });

  test('a session stops earlier; a time outside it is refused with what was typed kept', async () => {
    const url = await served(await at('2027-04-08T09:00:00+01:00'));
    const { page } = await watchedPage(browser, { javaScriptEnabled });
    await page.goto(`${url}/today`);
    await page.getByText('When the hours are not as usual').click();
    await page.getByLabel('Stop at').fill('13:00');
    await page.getByRole('button', { name: 'Stop then' }).click();
    await page.waitForSelector('.form-errors');
    expect(await page.textContent('.hours .error')).toBe('Write a time between 08:00 and 12:00.');
    expect(await page.getByLabel('Stop at').inputValue()).toBe('13:00');
    await page.getByLabel('Stop at').fill('10:00');
    await page.getByRole('button', { name: 'Stop then' }).click();
    await page.waitForSelector('text=Work on Sat 10 Apr stops at 10:00.');
    expect(await page.textContent('.notice')).toMatch(/School garden\s*: Sat 10 Apr to Sat 17 Apr/);
  });

  test('a batch is poured and a piece is stripped, by taps', async () => {
    const url = await served(await at(saturday('09:29')));
    const { page, complaints } = await watchedPage(browser, { javaScriptEnabled });
    await page.goto(`${url}/today`);
    // What comes after the next three steps is folded.
    await page.getByText(/^After that \d+ steps? more: pour 2 pieces/).click();
    await page.getByRole('checkbox', { name: '900 no. 2: Panel 900' }).uncheck();
    await page.getByRole('button', { name: /^Poured: 900 no\. 1/ }).click();
    await page.getByText('900 no. 1 poured.', { exact: true }).waitFor();
    await page.getByText('In moulds now: 900 no. 1').click();
    await page.getByRole('button', { name: 'Stripped: 900 no. 1' }).click();
    // It is full just now: nobody strips it yet, unless he says so.
    await page.locator('.asked').getByText('75 minutes before it has set').waitFor();
    await page.getByRole('button', { name: 'Yes, record it' }).click();
    await page.getByText('900 no. 1 stripped.', { exact: true }).waitFor();
    expect(await page.textContent('main')).toContain('Done today');
    expect(complaints.filter((one) => !one.includes('422'))).toEqual([]);
  });

  test('what was not written down in its session is, a little later, as it was planned', async () => {
    const { app, database } = await at(saturday('07:30'));
    await app.request('/today');
    const url = await served(screensOn(database, saturday('12:20')));
    const { page, complaints } = await watchedPage(browser, { javaScriptEnabled });
    await page.goto(`${url}/today`);
    expect(await page.textContent('h1')).toContain('To be recorded: pour 2 pieces');
    const taps = page.locator('#late').getByRole('button', { name: /^(Poured at|Stripped:|Packed:)/ });
    for (let left = 4; left > 0; left--) {
      const name = (await taps.first().getAttribute('aria-label')) ?? '';
      const tap = page.locator('#late').getByRole('button', { name, exact: true });
      await tap.click();
      await tap.waitFor({ state: 'detached' });
      await page.locator('.notice').getByText('No date moved.').waitFor();
    }
    expect(await page.locator('#late').count()).toBe(0);
    expect(await page.textContent('main')).toContain('Packed, to be handed over');
    expect(complaints).toEqual([]);
  });

  test('all that was not written down is with one tap, undone with one, and given up with one', async () => {
    const { app, database } = await at(saturday('07:30'));
    await app.request('/today');
    const url = await served(screensOn(database, saturday('12:20')));
    const { page, complaints } = await watchedPage(browser, { javaScriptEnabled });
    await page.goto(`${url}/today`);
    const all = page.getByRole('button', { name: 'All as planned' });
    expect((await all.boundingBox())?.height).toBeGreaterThanOrEqual(48);
    await all.click();
    await page
      .locator('.notice')
      .getByText(/^2 pieces poured, 2 stripped, .*1 order packed.* as planned\.$/)
      .waitFor();
    expect(await page.locator('#late').count()).toBe(0);
    await page
      .locator('.notice')
      .getByRole('button', { name: /^Undo: 2 pieces poured/ })
      .click();
    await all.waitFor();
    const lines = await page.locator('#late .step').count();
    const pack = page.getByRole('button', { name: 'Not done: pack for School garden' });
    expect((await pack.boundingBox())?.height).toBeGreaterThanOrEqual(48);
    await pack.click();
    await page.locator('.notice').getByText('Not packed for School garden.').waitFor();
    expect(await page.locator('#late .step').count()).toBe(lines - 1);
    await page.getByRole('button', { name: /^None of it was done/ }).click();
    await page
      .locator('.notice')
      .getByText(/^2 pieces not poured, 2 not stripped/)
      .waitFor();
    expect(await page.locator('#late').count()).toBe(0);
    expect(complaints).toEqual([]);
  });

  test('what can not be written down as planned is said beside it, and nothing is', async () => {
    const { app, database } = await at(saturday('07:30'));
    await app.request('/today');
    const screens = screensOn(database, saturday('12:20'));
    await screens.post('/moulds/900 no. 1/damaged', { note: '' });
    const url = await served(screens);
    const { page, complaints } = await watchedPage(browser, { javaScriptEnabled });
    await page.goto(`${url}/today`);
    await page.getByRole('button', { name: 'All as planned' }).click();
    await page.waitForSelector('.form-errors');
    expect(await page.textContent('.form-errors')).toContain('None of it was recorded.');
    expect(await page.textContent('#late .step-batch .error')).toContain('900 no. 1 is marked damaged');
    await page.locator('.form-errors a').click();
    expect(new URL(page.url()).hash).toMatch(/^#late-batch-/);
    expect(await page.locator(':target').getAttribute('class')).toContain('step-batch');
    expect(complaints.filter((one) => !one.includes('422'))).toEqual([]);
  });

  test('several sessions that were not recorded are, one of them first, a question answered, and then all', async () => {
    const order = { id: '27-002', customer: 'Ann', due: '2027-05-01', lines: [{ casting: 'panel-900', quantity: 8 }] };
    const yard = plannedYard({
      yard: { ...plannedYard().yard, now: saturday('07:30') },
      orders: [...plannedYard().orders, order],
      materials: plannedYard().materials.map((one) => ({ ...one, onHand: 20 })),
    });
    const { app, database } = await screensOver(yard);
    await app.request('/today');
    const screens = screensOn(database, '2027-04-26T09:00:00+01:00');
    await screens.get('/today');
    await screens.post('/buying/counted', { material: 'mesh', counted: '0' });
    const url = await served(screens);
    const { page, complaints } = await watchedPage(browser, { javaScriptEnabled });
    await page.goto(`${url}/today`);
    const sessions = page.locator('#late details.late-session');
    const count = await sessions.count();
    expect(count).toBeGreaterThan(1);
    expect(await page.textContent('h1')).toContain(`To be recorded, of ${count} sessions`);
    // What is past waits behind one line.
    expect(await sessions.first().isVisible()).toBe(false);
    await page.getByText(`${count} sessions, one by one`).click();
    await page.getByText(/^Sat 10 Apr, 8:00 to 12:00: /).click();
    await page.getByRole('button', { name: 'As planned: Sat 10 Apr, 8:00 to 12:00' }).click();
    await page.locator('.asked').getByText('too little Mesh').waitFor();
    await page.getByRole('button', { name: 'Yes, record it' }).click();
    await page
      .locator('.notice')
      .getByText(/poured, .* as planned (on|from) /)
      .waitFor();
    await page.getByText(/^Mesh: .* more taken than the stock book had\.$/).waitFor();
    await page.getByLabel('Mesh in the yard').fill('9');
    await page.getByRole('button', { name: 'Save count: Mesh' }).click();
    await page
      .locator('.notice')
      .getByText(/^Mesh counted: 9 in the yard/)
      .waitFor();
    await page.getByRole('button', { name: /^All( \d sessions)? as planned$/ }).click();
    await page
      .locator('.notice')
      .getByText(/poured, .* as planned (on|from) /)
      .waitFor();
    expect(await page.locator('#late').count()).toBe(0);
    expect(complaints.filter((one) => !one.includes('422'))).toEqual([]);
  });

  test('a piece that is not good is kept aside with what is wrong, and mended later', async () => {
    const inMould = [{ mould: '900 no. 1', casting: 'panel-900', filledAt: saturday('09:00'), order: '27-001' }];
    const yard = plannedYard({ yard: { ...plannedYard().yard, now: saturday('10:30') }, finished: [], inMould });
    const url = await served(await screensOver(yard));
    const { page, complaints } = await watchedPage(browser, { javaScriptEnabled });
    await page.goto(`${url}/today`);
    await page.getByText('Not good', { exact: true }).click();
    await page.getByLabel('What is wrong').fill('corner broken off');
    await page.getByRole('button', { name: 'Stripped, to mend: 900 no. 1' }).click();
    await page
      .getByText('900 no. 1 stripped, the piece is to be mended: corner broken off.', { exact: true })
      .waitFor();
    expect(await page.textContent('#to-mend')).toContain('corner broken off. It has cured.');
    await page.getByText('Mended, but fit to go out later').click();
    await page.getByLabel('Fit to go out from', { exact: true }).fill('9 Apr 2027');
    await page.getByRole('button', { name: 'Mended, fit from that day: Panel 900 from 900 no. 1' }).click();
    await page.waitForSelector('.form-errors');
    expect(await page.textContent('#to-mend .error')).toBe('That day has passed. Leave this empty: it has cured.');
    expect(await page.getByLabel('Fit to go out from', { exact: true }).inputValue()).toBe('9 Apr 2027');
    await page.getByRole('button', { name: 'Mended: Panel 900 from 900 no. 1', exact: true }).click();
    await page.getByText('Panel 900 from 900 no. 1 mended.', { exact: true }).waitFor();
    expect(await page.locator('#to-mend').count()).toBe(0);
    // The refusals are answers of 422, which a browser notes.
    expect(complaints.filter((one) => !one.includes('422'))).toEqual([]);
  });
});
