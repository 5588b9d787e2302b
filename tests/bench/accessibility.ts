import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { launchBrowser } from '../support/browser.ts';
import { DEMO_PAGES } from '../support/demo-pages.ts';
import { lookingAtDemo } from './served-demo.ts';
import { foundRows, type Row } from './table.ts';

const checker = readFileSync(createRequire(import.meta.url).resolve('html_codesniffer/build/HTMLCS.js'), 'utf8');

const WAYS: Readonly<Record<string, BrowserContextOptions>> = {
  'light, 1280 px': { viewport: { width: 1280, height: 900 } },
  'dark, 1280 px': { viewport: { width: 1280, height: 900 }, colorScheme: 'dark' },
  'light, 320 px': { viewport: { width: 320, height: 844 } },
};

/** What the checker says is an error: its rule, its words, and what of the page it is about. */
const ERRORS = `new Promise((resolve) =>
  HTMLCS.process('WCAG2AA', document, () =>
    resolve(
      HTMLCS.getMessages()
        .filter(({ type }) => type === HTMLCS.ERROR)
        .map(({ code, msg, element }) => code.replace(/^.*?Principle/, '') + ': ' + msg + ' ' + (element.outerHTML ?? '').slice(0, 160)),
    ),
  ))`;

const errorsOf = async (page: Page): Promise<string[]> => {
  await page.$$eval('details', (all) => {
    for (const one of all) one.open = true;
  });
  await page.evaluate(checker);
  return page.evaluate<string[]>(ERRORS);
};

const rowsOf = async (
  browser: Browser,
  url: string,
  [way, options]: [string, BrowserContextOptions],
): Promise<Row[]> => {
  const context = await browser.newContext({ ...options, serviceWorkers: 'block', bypassCSP: true });
  const page = await context.newPage();
  const found: { rule: string; where: string }[] = [];
  for (const path of DEMO_PAGES) {
    await page.goto(url + path);
    for (const error of await errorsOf(page)) found.push({ rule: error.split(': ')[0]!, where: `${path}: ${error}` });
  }
  await context.close();
  return foundRows(`${way}, ${DEMO_PAGES.length} pages`, found);
};

/** Every page of the demo as HTML_CodeSniffer sees it by WCAG 2.1 AA, in light, in dark and on a small phone: a checker beside axe. */
export const accessibilityRows = async (): Promise<Row[]> => {
  const browser = await launchBrowser();
  try {
    return await lookingAtDemo(async (url) => {
      const rows: Row[] = [];
      for (const way of Object.entries(WAYS)) rows.push(...(await rowsOf(browser, url, way)));
      return rows;
    });
  } finally {
    await browser.close();
  }
};
