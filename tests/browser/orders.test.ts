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

const ANSWER = '#ready h1';

describe('the question on the first page', () => {
  test('answers anew as the number changes, without a button', async () => {
    const url = await served(await demoScreens());
    const { page, complaints } = await watchedPage(browser);
    await page.goto(`${url}/?what=kit%3Acoping-set&number=1`);
    const ready = await page.$('#ready');
    const place = await page.locator('#number').boundingBox();
    for (const number of ['3', '12']) {
      const before = await page.textContent('#ready');
      await page.fill('#number', number);
      await page.waitForFunction((seen) => seen.ready?.textContent !== seen.before, { ready, before });
      expect(await page.textContent(ANSWER)).toMatch(/^\d+ × .+: ready \w{3} \d+ \w{3}/);
      expect(await page.locator('#number').boundingBox()).toEqual(place);
    }
    expect(complaints).toEqual([]);
  });

  test('says what holds the date once the number stands still, and not while it moves', async () => {
    const url = await served(await demoScreens());
    const { page, complaints } = await watchedPage(browser);
    // Whoever has it on the screen is told what holds it.
    await page.setViewportSize({ width: 1280, height: 1600 });
    await page.goto(`${url}/`);
    await page.selectOption('#what', { label: 'Coping set of six' });
    for (const number of ['2', '3', '4']) await page.fill('#number', number);
    await page.waitForSelector('#ready .held-up');
    expect(await page.textContent('#ready .held-up')).toMatch(/^Held up by: .+\.$/);
    expect(await page.$('#sooner a:has-text("What is it held up by?")')).toBeNull();
    // What takes seconds waits for a click, and then stands in place of the link.
    await page.click('#sooner a:has-text("What would two changes at once bring?")');
    await page.waitForSelector('#sooner p:has-text("wo changes at once")');
    expect(await page.$('#sooner a')).toBeNull();
    expect(complaints).toEqual([]);
  });

  test('says in words what is wrong with a number that is none', async () => {
    const url = await served(await demoScreens());
    const { page, complaints } = await watchedPage(browser);
    await page.goto(url);
    await page.fill('#number', '');
    await page.waitForSelector('#ready h1:has-text("How many?")');
    expect(complaints).toEqual([]);
  });
});

describe.each([
  ['with script', true],
  ['without script', false],
])('%s', (_how, javaScriptEnabled) => {
  test('an order is asked about, taken, and its date is read', async () => {
    const url = await served(await demoScreens());
    const { page, complaints } = await watchedPage(browser, { javaScriptEnabled });
    await page.goto(url);
    await page.selectOption('#what', { label: 'Herb square 450 x 450' });
    await page.fill('#number', '2');
    await page.click('text="Ask"');
    await page.waitForURL(/number=2/);
    const asked = /ready \w{3} \d+ \w{3}\.$/.exec((await page.textContent(ANSWER)) ?? '')?.[0];
    expect(asked).toBeDefined();
    await page.click('text="Take order"');
    await page.fill('#customer', 'Brid Casey');
    await page.fill('#wantedOn', '2027-07-31');
    await page.check('text="yes"');
    await page.click('.button.main');
    // With script the form goes off only once the server has answered that it is there.
    await page.waitForURL(/\/orders\/27-019/);
    const answer = await page.textContent('h1');
    expect(answer).toMatch(/^Brid Casey: ready \w{3} \d+ \w{3}, (\d+ days? to spare|on the day)\.$/);
    expect(await page.textContent('.notice')).toContain('Order 27-019 for Brid Casey taken.');
    await page.goto(`${url}/orders`);
    expect(await page.textContent('main')).toMatch(
      /Brid Casey\s*, promised \w{3} \d+ \w{3}, (\d+ days? to spare|on the day)\./,
    );
    expect(complaints).toEqual([]);
  });

  test('Enter in a field takes the order, and a date is held and promised', async () => {
    const url = await served(await demoScreens());
    const { page, complaints } = await watchedPage(browser, { javaScriptEnabled });
    await page.goto(`${url}/?what=kit%3Atrough&number=1`);
    await page.click('text="Hold this date"');
    expect(await page.inputValue('#heldUntil')).toBe('Sat 10 Apr 2027');
    await page.fill('#customer', 'Walk-in');
    await page.press('#customer', 'Enter');
    await page.waitForURL(/\/orders\/27-019/);
    expect(await page.textContent('.facts')).toContain('until the end of Sat 10 Apr');
    await page.click('text="Promise"');
    await page.waitForSelector('text=Date promised to Walk-in.');
    expect(await page.textContent('.facts')).not.toContain('until the end of');
    expect(complaints).toEqual([]);
  });
});

// Whether any plan keeps it is looked for at length, before it is said that none does.
describe('a date that cannot be kept', { timeout: 120_000 }, () => {
  const opened = async (javaScriptEnabled: boolean) => {
    const screens = await demoScreens();
    const url = await served(screens);
    const { page, complaints } = await watchedPage(browser, { javaScriptEnabled });
    await page.goto(`${url}/orders/new?what=kit%3Atrough&number=6`);
    await page.fill('#customer', 'Brid Casey');
    await page.fill('#promisedOn', 'Sat 10 Apr');
    await page.click('.buttons .button.main');
    await page.waitForSelector('.effect');
    return { screens, url, page, complaints };
  };

  test.each([
    ['with script', true],
    ['without script', false],
  ])('is asked about with its effect, and taken with the date that can be given, %s', async (_how, isScripted) => {
    const { url, page, complaints } = await opened(isScripted);
    expect(await page.textContent('.effect')).toMatch(/Sat 10 Apr can't be kept: by today's plan it is ready /);
    expect(await page.inputValue('#customer')).toBe('Brid Casey');
    if (isScripted) expect(await page.evaluate('document.activeElement.className')).toContain('effect');
    await page.click('.effect button[name="another-day"]');
    await page.waitForURL(`${url}/orders/27-019?**`);
    expect(await page.textContent('h1')).toMatch(
      /^Brid Casey: ready \w{3} \d+ \w{3}, (\d+ days? to spare|on the day)\.$/,
    );
    expect(complaints).toEqual([]);
  });

  // Each of its three questions is looked for at length. With script: the forms are the same ones without.
  test('is promised all the same once that was seen, on the page of the order too', async () => {
    const { url, page, complaints } = await opened(true);
    await page.click('text="Take order anyway"');
    await page.waitForURL(`${url}/orders/27-019?**`);
    expect(await page.textContent('h1')).toMatch(/(days?|weeks?) late\.$/);
    await page.fill('#promisedOn', 'tomorrow');
    await page.click('text="Promise"');
    await page.waitForSelector('.effect');
    expect(await page.textContent('.facts')).toContain('Sat 10 Apr');
    await page.click('text="Promise anyway"');
    await page.waitForSelector('text=Date promised to Brid Casey.');
    expect(await page.textContent('.facts')).toContain('Tue 6 Apr');
    expect(complaints).toEqual([]);
  });
});

test('a message is copied at a tap', async () => {
  const url = await served(await demoScreens());
  const { page, complaints } = await watchedPage(browser, { permissions: ['clipboard-read', 'clipboard-write'] });
  await page.goto(`${url}/orders`);
  await page.click('.order-sentence a');
  await page.click('.message summary');
  await page.click('[data-copy]');
  await page.waitForSelector('text="Copied"');
  const copied = await page.evaluate('navigator.clipboard.readText()');
  expect(copied).toMatch(/^Hello .*\. .*order 27-\d+/);
  expect(copied).toBe(await page.inputValue('.message textarea'));
  expect(complaints).toEqual([]);
});
