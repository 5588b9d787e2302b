import { mkdirSync, mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { serve } from '@hono/node-server';
import type { Browser } from 'playwright-core';
import { seedDemo } from '../../db/demo/larch-row.ts';
import { openDatabase } from '../../db/open.ts';
import { setHabits } from '../../db/stores/habits-store.ts';
import { setUnits } from '../../db/stores/units-store.ts';
import type { UnitSystem } from '../../shared/units.ts';
import { createApp } from '../../src/http/app.ts';
import { launchBrowser } from './browser.ts';
import { METRIC, US_HABITS } from './measures.ts';
import { DEMO_NOW } from './screens.ts';

/**
 * Takes the screenshots of the README and its pages: every page of the demo yard at phone and desk width, and some of them in both systems
 * of units. `npm run screenshots`, or with the beginning of a name, those alone: `npm run screenshots us-units`.
 */
/** A page that waits for its answer, and for what holds it, rather than filling it in. */
const ANSWERED = 'wait=yes&holds=yes';
const PAGES = {
  when: `/?${ANSWERED}`,
  today: '/today',
  orders: '/orders',
  moulds: '/moulds',
  turns: '/turns',
  buying: '/buying',
};
const QUOTES = {
  limits: `/?what=kit%3Aplanter&number=3&${ANSWERED}`,
  yard: '/yard',
  'going-out': '/going-out?on=2027-04-17&payload=250',
  mould: '/mould/1200%20no.%201',
  pieces: '/pieces',
  strength: '/yard/mixes/coping/strength?cement=N',
  prices: '/prices',
  'order-money': '/orders/27-010',
  quote: '/orders/27-010/quote',
};
const WIDTHS = [390, 1280];
const kit = (size: Record<string, string>): string => `/kits/by-size?${new URLSearchParams(size)}`;
/** Five sizes, each of another kind: one panel a side, several, no courses alike, an L, a row. */
const KITS = {
  'kit-rectangle': kit({ length: '1235', width: '635', courses: '2', ground: '80' }),
  'kit-long': kit({ length: '3035', width: '1235', courses: '3', ground: '100' }),
  'kit-square': kit({ length: '935', width: '935', courses: '4', ground: '100' }),
  'kit-l': kit({
    shape: 'L',
    length: '1835',
    width: '1835',
    cutLength: '900',
    cutWidth: '600',
    courses: '3',
    ground: '100',
    payload: '150',
  }),
  'kit-row': kit({ shape: 'row', length: '2700', courses: '2', ground: '100' }),
};
const FOLDER = fileURLToPath(new URL('../../views/screenshots/', import.meta.url));
/** Ten minutes before the Saturday's hours. */
const SATURDAY = '2027-04-10T06:50:00Z';
const PLANTER = '/kits/by-size?length=1235&width=635&courses=2&ground=80';
const PLANTER_US = `/kits/by-size?${new URLSearchParams({ length: '48 5/8', width: '25', courses: '2', ground: '3 1/8' })}`;

interface Shots {
  prefix: string;
  system: UnitSystem;
  now: string;
  /** Whether moulds are damaged first, so that there are changes to show. */
  changed?: boolean;
  /** The whole page, however long it is. */
  whole?: boolean;
  pages: Readonly<Record<string, string>>;
}

const SHOTS: readonly Shots[] = [
  { prefix: '', system: 'metric', now: DEMO_NOW, pages: PAGES },
  { prefix: '', system: 'metric', now: DEMO_NOW, pages: { ...QUOTES, ...KITS }, whole: true },
  {
    prefix: '',
    system: 'metric',
    now: DEMO_NOW,
    pages: { changes: '/changes', 'next-mould': '/moulds?next=yes' },
    changed: true,
    whole: true,
  },
  ...[
    { prefix: 'us-units-', system: 'US', pages: { today: '/today', buying: '/buying', kit: PLANTER_US } } as const,
    { prefix: 'metric-units-', system: 'metric', pages: { today: '/today', buying: '/buying', kit: PLANTER } } as const,
  ].map((shots) => ({ ...shots, now: SATURDAY })),
];

/** A bad morning: moulds are damaged, and one of them is mended again. */
const damageSome = async (request: ReturnType<typeof createApp>['request']): Promise<void> => {
  const mark = async (mould: string, how: string) => {
    const { status } = await request(`/moulds/${encodeURIComponent(mould)}/${how}`, { method: 'POST' });
    if (status !== 303) throw new Error(`${mould} could not be marked ${how}: ${status}`);
  };
  for (const mould of ['900 no. 1', '1200 no. 2', '1200 no. 3', '600 no. 1']) await mark(mould, 'damaged');
  await mark('600 no. 1', 'mended');
};

const demoIn = async ({ system, now, changed }: Shots) => {
  const database = await openDatabase({ url: `file:${join(mkdtempSync(join(tmpdir(), 'yard-')), 'yard.db')}` });
  await database.write(async (tx) => {
    await seedDemo(tx, DEMO_NOW.slice(0, 10), DEMO_NOW);
    await setUnits(tx, system);
    await setHabits(tx, system === 'US' ? US_HABITS : METRIC);
  });
  const { fetch, request } = createApp({ database, now: () => now });
  if (changed) await damageSome(request);
  return new Promise<{ port: number; close: () => Promise<void> }>((resolve) => {
    const server = serve({ fetch, hostname: '127.0.0.1', port: 0 }, ({ port }) =>
      resolve({
        port,
        close: async () => {
          server.close();
          await database.close();
        },
      }),
    );
  });
};

const take = async (browser: Browser, shots: Shots, wanted: string): Promise<void> => {
  const { port, close } = await demoIn(shots);
  for (const [name, path] of Object.entries(shots.pages))
    for (const width of WIDTHS) {
      const file = `${shots.prefix}${name}-${width}.png`;
      if (!file.startsWith(wanted)) continue;
      const page = await browser.newPage({ viewport: { width, height: 844 } });
      await page.goto(`http://127.0.0.1:${port}${path}`, { waitUntil: 'load' });
      await page.screenshot({ path: join(FOLDER, file), fullPage: shots.whole ?? false });
      await page.close();
    }
  await close();
};

const browser = await launchBrowser();
mkdirSync(FOLDER, { recursive: true });
for (const shots of SHOTS) await take(browser, shots, process.argv[2] ?? '');
await browser.close();
