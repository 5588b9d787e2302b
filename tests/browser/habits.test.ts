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

const opened = async (path: string) => {
  const screens = await demoScreens();
  const url = await served(screens);
  const watched = await watchedPage(browser, { viewport: { width: 1280, height: 844 } });
  await watched.page.goto(url + path);
  return { ...watched, ...screens, url };
};

/** Presses Tab until what has the focus is called so; fails when it is not among the next ones. */
const tabTo = async (page: Page, name: RegExp, most = 60): Promise<void> => {
  const seen: string[] = [];
  for (let presses = 0; presses < most; presses++) {
    await page.keyboard.press('Tab');
    const called = await page.evaluate<string>(`(() => {
      const at = document.activeElement;
      return at.getAttribute('aria-label') ?? at.labels?.[0]?.textContent ?? at.textContent ?? '';
    })()`);
    seen.push(called.trim().slice(0, 40));
    if (name.test(called.trim())) return;
  }
  throw new Error(`Nothing called ${name} came among: ${seen.join(' | ')}`);
};

const focusIsVisible = (page: Page): Promise<boolean> =>
  page.evaluate(`(() => {
    const { outlineStyle, outlineWidth } = getComputedStyle(document.activeElement);
    return outlineStyle !== 'none' && parseFloat(outlineWidth) >= 2;
  })()`);

describe('by keyboard alone', () => {
  test('an order is taken', async () => {
    const { page, complaints } = await opened('/');
    await tabTo(page, /^Skip to the page$/, 1);
    expect(await focusIsVisible(page)).toBe(true);
    await page.keyboard.press('Enter');
    await tabTo(page, /^Of what$/, 4);
    await page.keyboard.type('Trough');
    await tabTo(page, /^Take order$/);
    expect(await focusIsVisible(page)).toBe(true);
    await page.keyboard.press('Enter');
    await page.waitForSelector('#customer');
    await tabTo(page, /^Customer$/);
    await page.keyboard.type('Brid Casey');
    await tabTo(page, /^Wanted$/);
    await page.keyboard.type('31 Apr');
    await page.keyboard.press('Enter');
    await page.waitForSelector('.form-errors');
    // What was wrong has the focus, and its line leads to the field, where everything still stands.
    expect(await page.evaluate('document.activeElement.className')).toContain('form-errors');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    expect(await page.evaluate('document.activeElement.id')).toBe('wantedOn');
    expect(await page.inputValue('#customer')).toBe('Brid Casey');
    await page.keyboard.press('Control+A');
    await page.keyboard.type('31 May');
    await page.keyboard.press('Enter');
    await page.waitForSelector('.notice');
    expect(await page.textContent('.notice')).toContain('for Brid Casey taken.');
    expect(await page.evaluate('document.activeElement.className')).toContain('notice');
    expect(complaints.filter((words) => !words.includes('422'))).toEqual([]);
  });

  test('an answer that comes anew throws nobody off what is about to be pressed', async () => {
    const { page } = await opened('/');
    const anew = async () => {
      await page.evaluate(`htmx.ajax('GET', location.href, { target: '#ready' })`);
      await page.evaluate('new Promise(requestAnimationFrame)');
    };
    const focused = () => page.evaluate(`document.activeElement.textContent.trim()`);
    await page.locator('#ready button', { hasText: 'Take order' }).focus();
    await anew();
    expect(await focused()).toBe('Take order');
    // What is gone with the answer leaves the focus where its place was, and not at the top of the page.
    await page.evaluate(
      `document.querySelector('#sooner').insertAdjacentHTML('beforeend', '<a href="/orders">Gone</a>')`,
    );
    await page.locator('#sooner a', { hasText: 'Gone' }).focus();
    await anew();
    expect(await page.evaluate('document.activeElement.id')).toBe('ready');
  });

  test('a mould is found and marked', async () => {
    const { page } = await opened('/moulds');
    await tabTo(page, /^Find a mould$/);
    await page.keyboard.type('600 no. 2');
    await page.waitForSelector('h1:has-text("One of 12 moulds found.")');
    await tabTo(page, /^Cleaned: 600 no\. 2$/);
    expect(await focusIsVisible(page)).toBe(true);
    await page.keyboard.press('Space');
    await page.waitForSelector('.notice');
    expect(await page.textContent('.notice')).toContain('600 no. 2 marked cleaned');
    expect(await page.evaluate('document.activeElement.className')).toContain('notice');
    await tabTo(page, /^Undo: 600 no\. 2 marked cleaned$/, 2);
  });
});

const PAGES = ['/', '/today', '/orders', '/orders/new', '/orders/27-010', '/moulds', '/turns', '/buying', '/changes'];
const KIT_PAGES = ['/kits/by-size', '/yard/panels', '/yard/panels/panel-900', '/yard/kits/planter'];
const YARD_PAGES = [
  '/yard',
  '/yard/mixes/thin',
  '/yard/hours',
  '/yard/hours/1',
  '/yard/files',
  '/orders/past',
  '/begin/four',
];

test.each([...PAGES, ...KIT_PAGES, ...YARD_PAGES])(
  'Tab leads through %s from top to bottom, and is seen where it is',
  async (path) => {
    const { page } = await opened(path);
    const wrong: string[] = [];
    let before = -1;
    for (let presses = 0; presses < 200; presses++) {
      await page.keyboard.press('Tab');
      const at = await page.evaluate<{ what: string; place: number; seen: boolean } | null>(`(() => {
      const at = document.activeElement;
      if (at === document.body) return null;
      const { outlineStyle, outlineWidth } = getComputedStyle(at);
      const { top, bottom, width } = at.getBoundingClientRect();
      const inSight = bottom > 0 && top < innerHeight && width > 1;
      const place = [...document.querySelectorAll('*')].indexOf(at);
      return { what: at.outerHTML.slice(0, 80), place, seen: outlineStyle !== 'none' && parseFloat(outlineWidth) >= 2 && inSight };
    })()`);
      if (at === null) break;
      if (!at.seen || at.place < before) wrong.push(at.what);
      before = at.place;
    }
    expect(before).toBeGreaterThan(0);
    expect(wrong).toEqual([]);
  },
);

describe('the back button', () => {
  test('leads from an order to what was looked for', async () => {
    const { page, url } = await opened('/orders');
    await page.fill('#find', 'garden');
    await page.waitForSelector('h1:has-text("found.")');
    expect(page.url()).toBe(`${url}/orders?find=garden&which=all`);
    const found = await page.textContent('h1');
    await page.click('.order-sentence a');
    await page.waitForURL(/\/orders\/27-/);
    await page.goBack();
    await page.waitForSelector('h1:has-text("found.")');
    expect(await page.textContent('h1')).toBe(found);
    expect(await page.inputValue('#find')).toBe('garden');
  });

  test('leads to the question as it was changed', async () => {
    const { page } = await opened('/');
    const before = await page.textContent('#ready h1');
    await page.selectOption('#what', { label: 'Coping set of six' });
    await page.fill('#number', '12');
    await page.waitForURL(/number=12/);
    await page.waitForSelector('#ready .held-up');
    const answer = await page.textContent('#ready h1');
    expect(answer).not.toBe(before);
    await page.click('nav >> text=Moulds');
    await page.waitForURL(/\/moulds$/);
    await page.goBack();
    await page.waitForSelector('#ready .held-up');
    expect(await page.inputValue('#number')).toBe('12');
    expect(await page.textContent('#ready h1')).toBe(answer);
  });

  test('leads, after a form, to the page before it, and nothing is done twice', async () => {
    const { page, url, database } = await opened('/orders');
    await page.click('nav >> text=Moulds');
    await page.waitForURL(/\/moulds$/);
    await page.locator('.mould:has(button:has-text("Cleaned")) summary').first().click();
    await page.locator('button:has-text("Cleaned")').first().click();
    await page.waitForSelector('.notice');
    expect(page.url()).toBe(`${url}/moulds`);
    const revision = () => database.read((tx) => tx.run('select max(id) as id from changes'));
    const changes = (await revision()).rows[0]?.id;
    await page.goBack();
    await page.waitForURL(/\/orders$/);
    await page.goForward();
    await page.waitForURL(/\/moulds$/);
    expect((await revision()).rows[0]?.id).toBe(changes);
  });
});

describe('when nobody answers', () => {
  test('a form stays as it was filled in, and the page says so until there is an answer', async () => {
    const { page, url } = await opened('/moulds?find=450');
    const row = page.locator('.mould', { hasText: '450 no. 1' });
    await row.locator('summary').first().click();
    await row.locator('.out-of-use > summary').click();
    await row.getByLabel('What is wrong').fill('Base split');
    await page.route('**/moulds/**', (route) => route.fulfill({ status: 500, body: '<h1>Something went wrong</h1>' }));
    await row.getByRole('button', { name: 'Mark damaged: 450 no. 1' }).click();
    await page.waitForSelector('#not-sent:not([hidden])');
    expect(await page.textContent('#not-sent')).toContain('Everything you typed is still here.');
    expect(await row.getByLabel('What is wrong').inputValue()).toBe('Base split');
    await page.unroute('**/moulds/**');
    await page.route('**/moulds/**', (route) => route.abort());
    await row.getByRole('button', { name: 'Mark damaged: 450 no. 1' }).click();
    await page.waitForSelector('#waiting:not([hidden])');
    expect(await page.textContent('#waiting')).toContain('Kept on this phone, not sent yet:Mark damaged: 450 no. 1');
    expect(await row.getByLabel('What is wrong').inputValue()).toBe('Base split');
    expect(page.url()).toBe(`${url}/moulds?find=450`);
    await page.unroute('**/moulds/**');
    await page.reload();
    await page.waitForSelector('#waiting', { state: 'hidden' });
    await page.getByText('Base split').first().waitFor({ state: 'attached' });
    expect(await page.isVisible('#not-sent')).toBe(false);
    expect(await page.textContent('main')).toContain('Base split');
  });
});

/** A page of the program's own after a fault, as the browser gets it. */
const FAULT_PAGE = `<!doctype html><html lang="en"><body><div id="not-sent" tabindex="-1" hidden><p></p></div>
  <main id="page"><h1>Something went wrong in the program.</h1><span hidden data-fault></span></main>
  <script src="/assets/screen.js"></script></body></html>`;

describe('an order that could not be sent', () => {
  const filledIn = async () => {
    const opening = await opened('/orders/new?what=kit%3Atrough&number=1');
    await opening.page.fill('#customer', 'Brid Casey');
    await opening.page.fill('#note', 'Gate code 4');
    await opening.page.check('text="yes"');
    return opening;
  };
  const stillThere = async (page: Page) => {
    expect(await page.inputValue('#customer')).toBe('Brid Casey');
    expect(await page.inputValue('#note')).toBe('Gate code 4');
    expect(await page.isChecked('input[name=slip][value=yes]')).toBe(true);
  };

  test('stays as it was filled in while nobody answers, and is taken once', async () => {
    const { page } = await filledIn();
    await page.route('**/*', (route) => route.abort());
    await page.click('.button.main');
    await page.waitForSelector('#not-sent:not([hidden])');
    expect(await page.textContent('#not-sent')).toContain('this was not sent. Everything you typed is still here.');
    await stillThere(page);
    await page.unroute('**/*');
    await page.click('.button.main');
    await page.waitForSelector('.notice');
    expect(await page.textContent('.notice')).toContain('for Brid Casey taken.');
    // What was taken is not filled in again.
    await page.goto(page.url().replace(/27-.*/, 'new'));
    expect(await page.inputValue('#customer')).toBe('');
  });

  test('is there again on the way back from a fault of the program', async () => {
    const { page } = await filledIn();
    await page.route('**/orders', (route) =>
      route.request().method() === 'POST'
        ? route.fulfill({ status: 500, contentType: 'text/html', body: FAULT_PAGE })
        : route.continue(),
    );
    await page.click('.button.main');
    await page.waitForSelector('h1:has-text("Something went wrong")');
    await page.goBack();
    await page.waitForSelector('#customer');
    await stillThere(page);
  });
});

describe('a day', () => {
  test('is read as it is typed, and the page says how', async () => {
    const { page, complaints } = await opened('/orders/new');
    for (const [typed, read] of [
      ['5/6', 'That is Sat 5 Jun 2027, with the day first.'],
      ['next Saturday', 'That is Sat 10 Apr 2027.'],
      ['31 Apr', '31 Apr does not exist.'],
    ] as const) {
      await page.fill('#wantedOn', typed);
      await page.press('#wantedOn', 'Tab');
      await page.waitForSelector(`#wantedOn-read:has-text("${read}")`);
    }
    expect(complaints).toEqual([]);
  });

  test('chosen in the calendar stands in the field, and answers the question', async () => {
    const { page, complaints } = await opened('/');
    expect(await page.isVisible('[data-calendar=wantedOn]')).toBe(true);
    await page.fill('#wantedOn-picker', '2027-07-31', { force: true });
    await page.waitForSelector('#ready .chosen:has-text("Sat 31 Jul")');
    expect(await page.inputValue('#wantedOn')).toBe('Sat 31 Jul 2027');
    expect(page.url()).toContain('wantedOn=Sat+31+Jul+2027');
    expect(complaints).toEqual([]);
  });

  test('is a plain field without script', async () => {
    const url = await served(await demoScreens());
    const { page } = await watchedPage(browser, { javaScriptEnabled: false });
    await page.goto(`${url}/?what=kit%3Aplanter&number=1`);
    expect(await page.isVisible('[data-calendar=wantedOn]')).toBe(false);
    await page.fill('#wantedOn', '31 July');
    await page.click('text="Ask"');
    await page.waitForURL(/wantedOn=31\+July/);
    expect(await page.textContent('#ready .chosen')).toContain('Yes, Sat 31 Jul can be kept');
  });
});
