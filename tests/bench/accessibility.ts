import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { serve } from '@hono/node-server';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { openDatabase } from '../../db/open.ts';
import { launchBrowser } from '../support/browser.ts';
import { DEMO_PAGES } from '../support/demo-pages.ts';
import { DEMO_NOW, screensOn, withDemo } from '../support/screens.ts';
import type { Row } from './table.ts';

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
  const found = new Map<string, { count: number; first: string }>();
  for (const path of DEMO_PAGES) {
    await page.goto(url + path);
    for (const error of await errorsOf(page)) {
      const [rule = ''] = error.split(': ');
      const before = found.get(rule);
      found.set(rule, { count: (before?.count ?? 0) + 1, first: before?.first ?? `${path}: ${error}` });
    }
  }
  await context.close();
  const sum = [...found.values()].reduce((all, { count }) => all + count, 0);
  return [
    { what: `${way}, ${DEMO_PAGES.length} pages`, figure: `${sum} errors`, aim: 'aim: none' },
    ...[...found].map(([rule, { count, first }]) => ({ what: `  ${rule}`, figure: `${count}`, aim: first })),
  ];
};

/** Every page of the demo as HTML_CodeSniffer sees it by WCAG 2.1 AA, in light, in dark and on a small phone: a checker beside axe. */
export const accessibilityRows = async (): Promise<Row[]> => {
  const folder = mkdtempSync(join(tmpdir(), 'yard-'));
  const database = await openDatabase({ url: `file:${join(folder, 'yard.db')}` });
  await database.write(withDemo);
  const { app } = screensOn(database, DEMO_NOW);
  const browser = await launchBrowser();
  try {
    return await new Promise((resolve, reject) => {
      const server = serve({ fetch: app.fetch, hostname: '127.0.0.1', port: 0 }, async ({ port }) => {
        const rows: Row[] = [];
        try {
          for (const way of Object.entries(WAYS))
            rows.push(...(await rowsOf(browser, `http://127.0.0.1:${port}`, way)));
          resolve(rows);
        } catch (fault) {
          reject(fault);
        } finally {
          server.close();
        }
      });
    });
  } finally {
    await browser.close();
    await database.close();
    rmSync(folder, { recursive: true, force: true });
  }
};
