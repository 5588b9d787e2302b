import { mkdirSync, mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { serve } from '@hono/node-server';
import { seedDemo } from '../../db/demo/larch-row.ts';
import { openDatabase } from '../../db/open.ts';
import { createApp } from '../../src/http/app.ts';
import { launchBrowser } from './browser.ts';
import { DEMO_NOW } from './screens.ts';

/** Takes the screenshots of the README: every page of the demo yard at phone and desk width. `npm run screenshots`. */
const PAGES = { when: '/', today: '/today', orders: '/orders', moulds: '/moulds', turns: '/turns', buying: '/buying' };
const WIDTHS = [390, 1280];
const FOLDER = fileURLToPath(new URL('../../views/screenshots/', import.meta.url));

const database = await openDatabase({ url: `file:${join(mkdtempSync(join(tmpdir(), 'yard-')), 'yard.db')}` });
await database.write((tx) => seedDemo(tx, DEMO_NOW.slice(0, 10), DEMO_NOW));
const { fetch } = createApp({ database, now: () => DEMO_NOW });
const server = serve({ fetch, hostname: '127.0.0.1', port: 0 }, async ({ port }) => {
  const browser = await launchBrowser();
  mkdirSync(FOLDER, { recursive: true });
  for (const [name, path] of Object.entries(PAGES))
    for (const width of WIDTHS) {
      const page = await browser.newPage({ viewport: { width, height: 844 } });
      await page.goto(`http://127.0.0.1:${port}${path}`, { waitUntil: 'networkidle' });
      await page.screenshot({ path: join(FOLDER, `${name}-${width}.png`) });
      await page.close();
    }
  await browser.close();
  server.close();
  await database.close();
});
