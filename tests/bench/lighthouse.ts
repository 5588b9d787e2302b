import { execFile } from 'node:child_process';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { launchBrowser } from '../support/browser.ts';
import { fetched } from './fetched.ts';
import { servedBeside } from './pages/served-beside.ts';
import type { Row } from './table.ts';

const run = promisify(execFile);

/** The last that runs on Node 20. */
const LIGHTHOUSE_VERSION = '12.8.2';

const PAGES = ['/', '/today', '/orders', '/orders/27-010', '/orders/new', '/moulds', '/turns', '/buying', '/yard'];
const CATEGORIES = ['performance', 'accessibility', 'best-practices'] as const;
/** Its own settings of a phone on a slow line with a slow processor, and of a desk. */
const WAYS: Readonly<Record<string, readonly string[]>> = { 'on a phone': [], 'on a desk': ['--preset=desktop'] };

interface Audit {
  id: string;
  score: number | null;
  displayValue?: string;
}

interface Report {
  categories: Record<string, { score: number | null; auditRefs: { id: string; weight: number }[] }>;
  audits: Record<string, Audit>;
}

const freePort = (): Promise<number> =>
  new Promise((resolve) => {
    const server = createServer().listen(0, '127.0.0.1', () => {
      const { port } = server.address() as { port: number };
      server.close(() => resolve(port));
    });
  });

const reportOf = async (url: string, debugPort: number, options: readonly string[]): Promise<Report> => {
  const program = join(fetched('lighthouse', LIGHTHOUSE_VERSION), 'cli/index.js');
  const asked = [`--port=${debugPort}`, '--output=json', '--quiet', `--only-categories=${CATEGORIES.join(',')}`];
  const { stdout } = await run(process.execPath, [program, url, ...asked, ...options], { maxBuffer: 64_000_000 });
  return JSON.parse(stdout) as Report;
};

/** What took points off, with its figure. */
const lacks = ({ categories, audits }: Report): string =>
  CATEGORIES.flatMap((category) => categories[category]!.auditRefs)
    .filter(({ weight, id }) => weight > 0 && (audits[id]?.score ?? 1) < 0.9)
    .map(({ id }) => `${id} ${audits[id]!.displayValue ?? ''}`.trim())
    .join(', ');

/** The main pages of the demo as Lighthouse scores them, each of three figures up to 100, and what took points off; or one page alone. */
export const lighthouseRows = async (only?: string): Promise<Row[]> => {
  const debugPort = await freePort();
  const browser = await launchBrowser(debugPort);
  const { child, port } = await servedBeside(0, 0);
  const rows: Row[] = [];
  try {
    for (const path of PAGES.filter((one) => only === undefined || one === only))
      for (const [way, options] of Object.entries(WAYS)) {
        const report = await reportOf(`http://127.0.0.1:${port}${path}`, debugPort, options);
        const scores = CATEGORIES.map((category) => Math.round((report.categories[category]?.score ?? 0) * 100));
        rows.push({ what: `${path} ${way}`, figure: scores.join(' / '), aim: lacks(report) });
      }
    return rows;
  } finally {
    child.removeAllListeners('exit');
    child.kill();
    await browser.close();
  }
};
