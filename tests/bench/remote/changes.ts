import { seedDemo } from '../../../db/demo/larch-row.ts';
import { openDatabase } from '../../../db/open.ts';
import { startBackground } from '../../../src/background.ts';
import { createApp } from '../../../src/http/app.ts';
import { formsIn } from '../../support/page-form.ts';
import { DEMO_NOW } from '../../support/screens.ts';

/** What one act or page took: round trips to the server, and milliseconds. */
export interface Taken {
  what: string;
  trips: number;
  ms: number;
}

const LIMITS = { improvementLimitMs: 600_000, questionLimitMs: 600_000 };
const NEXT_DAY = '2027-04-06T07:30:00Z';
const PAGES = ['/', '/today', '/orders', '/moulds', '/turns', '/buying'];

/** The main changes and pages of the demo on the database at an address, one after another; `roundTrips` counts since it was last asked. */
export const mainChanges = async (url: string, roundTrips: () => number): Promise<Taken[]> => {
  const database = await openDatabase({ url });
  await database.write((tx) => seedDemo(tx, DEMO_NOW.slice(0, 10), DEMO_NOW));
  const clock = { now: DEMO_NOW };
  const started = startBackground({ database, now: () => clock.now, tell: console.error, ...LIMITS });
  // Measured with no search for a better plan beside it.
  const background = { ...started, planMade: () => {}, improving: () => false };
  const app = createApp({ database, now: () => clock.now, background });
  const taken: Taken[] = [];
  const measured = async (what: string, work: () => Response | Promise<Response>): Promise<Response> => {
    roundTrips();
    const begun = performance.now();
    const answer = await work();
    await answer.clone().text();
    taken.push({ what, ms: performance.now() - begun, trips: roundTrips() });
    return answer;
  };
  const page = async (path: string) => (await app.request(path)).text();
  const sent = async (what: string, path: string, fields: Record<string, string>): Promise<number> => {
    const answer = await measured(what, () => app.request(path, { method: 'POST', body: new URLSearchParams(fields) }));
    if (answer.status !== 303) throw new Error(`${what} was answered with ${answer.status}`);
    return Number(/done=(\d+)/.exec(answer.headers.get('Location') ?? '')?.[1]);
  };
  const formOn = async (path: string, action: string) => {
    const form = formsIn(await page(path)).find((one) => one.action === action);
    if (!form) throw new Error(`${path} has no form for ${action}`);
    const [button] = form.buttons;
    return { ...form.fields, ...(button?.name ? { [button.name]: button.value } : {}) };
  };
  await page('/');
  const order = await sent('an order is taken', '/orders', { what0: 'kit:planter', quantity0: '2', customer: 'Ada' });
  await sent('a piece is stripped', '/today/stripped', await formOn('/today', '/today/stripped'));
  await sent('stock is counted', '/count', { ...(await formOn('/count', '/count')), stock2: '9' });
  await sent('a mould is found damaged', '/count', { ...(await formOn('/count', '/count')), mould1: 'damaged' });
  await sent('an order is undone', '/undo', { change: String(order), back: '/orders' });
  for (const path of PAGES) await measured(`page ${path}`, () => app.request(path));
  clock.now = NEXT_DAY;
  await measured('the first page of a day, planned anew', () => app.request('/orders'));
  await started.close();
  await database.close();
  return taken;
};
