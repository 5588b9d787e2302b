import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { YardFile } from '../../shared/yard-file.ts';
import { launchBrowser } from '../support/browser.ts';
import { demoToLookAt } from '../support/demo-to-look-at.ts';
import { printedOver, printedText } from '../support/printed-text.ts';
import { scaledYard } from '../support/scaled-yard.ts';
import { screensOver } from '../support/screens.ts';
import { served, watchedPage } from '../support/served-screens.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());
const demo = demoToLookAt();

const PAPER = {
  A4: { format: 'A4' },
  Letter: { format: 'Letter' },
  short: { width: '210mm', height: '120mm' },
} as const;

const printed = async (url: string, paper: keyof typeof PAPER, path = '/today/sheet') => {
  const { page } = await watchedPage(browser, { viewport: { width: 703, height: 1032 } });
  await page.goto(url + path);
  const sheets = await printedText(await page.pdf({ ...PAPER[paper], preferCSSPageSize: paper !== 'short' }));
  await page.close();
  return sheets;
};

const words = (sheet: readonly { text: string }[]): string => sheet.map(({ text }) => text).join(' ');

/** What stands in the lower margin of a sheet, of 12 mm. */
const footOf = (sheet: readonly { text: string; y: number }[]): string => words(sheet.filter(({ y }) => y < 34));

/** A name that would end the text of a style sheet. */
const named = (yard: YardFile): YardFile => ({ ...yard, yard: { ...yard.yard, name: '"Größe" & {Söhne} \\' } });

/* Seen: a session that was a little too long for A4 left the first sheet empty and began on the second. */
describe.each([
  ['the demo, a short session', 'Larch Row Yard', async () => demo()],
  [
    'a yard of 30 orders, a long session',
    '"Größe" & {Söhne} \\',
    async () => served(await screensOver(named(scaledYard(30, 14)))),
  ],
])('the sheet for the wall of %s', (_name, yardName, serve) => {
  test('is one sheet of A4 or of Letter, and on short paper several that begin at the first', async () => {
    const url = await serve();
    for (const paper of ['A4', 'Letter', 'short'] as const) {
      const sheets = await printed(url, paper);
      if (paper !== 'short') expect([paper, sheets.length]).toEqual([paper, 1]);
      else expect(sheets.length).toBeGreaterThan(1);
      expect(words(sheets[0]!)).toMatch(/ sheet: /);
      sheets.forEach((sheet, place) => {
        expect(printedOver(sheet)).toEqual([]);
        expect(words(sheet)).toContain(`${place + 1} / ${sheets.length}`);
        expect(footOf(sheet)).toContain(yardName);
      });
      // The list goes on below its own headings.
      for (const sheet of sheets.filter((one) => / \d+:\d\d (Mix|Strip|Set up) /.test(words(one))))
        expect(words(sheet)).toMatch(/From.*Work/);
    }
  });
});

test.each([
  ['/today/evening', 1, /Before Wednesday: .*Acid powder hurts eyes.*spread them fl ?at outside/],
  ['/moulds/labels', 2, /1200 no\. 1/],
  ['/going-out?on=2027-05-01&payload=250', 2, /Goes to: The school.*Gate is locked.*HSE INDG143.*strap/],
  ['/turns', 1, /900 no\. 1.*Planning time only: check the piece/],
])(
  '%s on paper has nothing over anything, yard and page on each of %i sheets at most, and all that is said',
  async (path, most, says) => {
    for (const paper of ['A4', 'Letter'] as const) {
      const sheets = await printed(demo(), paper, path);
      expect([paper, sheets.length <= most]).toEqual([paper, true]);
      expect(sheets.map(words).join(' ')).toMatch(says);
      sheets.forEach((sheet, place) => {
        expect(printedOver(sheet)).toEqual([]);
        expect(words(sheet)).toContain(`${place + 1} / ${sheets.length}`);
        expect(footOf(sheet)).toContain('Larch Row Yard');
      });
    }
  },
);
