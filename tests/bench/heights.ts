import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { launchBrowser } from '../support/browser.ts';
import { DEMO_PAGES } from '../support/demo-pages.ts';
import { lookingAtDemo } from './served-demo.ts';
import type { Row } from './table.ts';

const SCREENS = { 'on a phone': { width: 390, height: 844 }, 'on a desk': { width: 1280, height: 800 } };

const fileName = (path: string, width: number): string => `${path.replace(/[^\w]+/g, '-') || '-'}-${width}.png`;

const heightsOf = async (browser: Browser, url: string, paths: readonly string[], folder?: string): Promise<Row[]> => {
  const page = await browser.newPage({ serviceWorkers: 'block' });
  const rows: Row[] = [];
  for (const path of paths) {
    const heights: string[] = [];
    for (const [way, viewport] of Object.entries(SCREENS)) {
      await page.setViewportSize(viewport);
      await page.goto(url + path);
      heights.push(`${await page.evaluate('document.documentElement.scrollHeight')} px ${way}`);
      if (folder) await page.screenshot({ path: join(folder, fileName(path, viewport.width)) });
    }
    rows.push({ what: path, figure: heights.join(', '), aim: '' });
  }
  return rows;
};

/**
 * How high each page of the demo is on a phone and on a desk; with a folder, also the picture of what stands there before anybody
 * scrolls. `only` is the beginning of an address.
 */
export const heightRows = async (folder?: string, only = '/'): Promise<Row[]> => {
  if (folder) mkdirSync(folder, { recursive: true });
  const browser = await launchBrowser();
  try {
    return await lookingAtDemo((url) =>
      heightsOf(
        browser,
        url,
        DEMO_PAGES.filter((path) => path.startsWith(only)),
        folder,
      ),
    );
  } finally {
    await browser.close();
  }
};
