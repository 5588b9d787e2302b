import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, onTestFinished, test } from 'vitest';
import { seedDemo } from '../../db/demo/larch-row.ts';
import { type Database, openDatabase } from '../../db/open.ts';
import { recentHeads } from '../../db/stores/change-store.ts';
import { orderById, promisedDays } from '../../db/stores/order-store.ts';
import type { PlanFile } from '../../shared/plan.ts';
import { createApp } from '../../src/http/app.ts';
import { currentPlan } from '../../src/usecases/plan/make-plan.ts';
import { givenOrders } from '../../src/usecases/plan/remake-plan.ts';
import { launchBrowser } from '../support/browser.ts';
import { demoAt } from '../support/demo-saturday.ts';
import { restartedServer } from '../support/restarted-server.ts';
import { watchedPage } from '../support/served-screens.ts';
import { temporaryDatabase, temporaryUrl } from '../support/temporary-database.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());

/** Opened one after another, in the middle of whatever is going on. */
const PAGES = ['/', '/today', '/orders', '/moulds', '/buying', '/turns'];

/** Every so many minutes something is looked at and recorded. */
const TICK = 8;
/** A tap comes after a step is over, by the clock of the page, which shows steps of five minutes. */
const LATE = 1;

/** When a new order is taken, and of how many pieces: they may be poured on the same day, beside all that was planned. */
const ORDERED = 9 * 60 + 54;
const NEW_PIECES = 4;

/** A list without others, each as often as it is there. */
const without = (list: readonly string[], others: readonly string[]): string[] => {
  const left = [...others];
  return list.filter((one) => {
    const place = left.indexOf(one);
    if (place >= 0) left.splice(place, 1);
    return place < 0;
  });
};

const clockText = (minutes: number): string =>
  `${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`;

const PHONE = {
  ...{ hasTouch: true, isMobile: true, timezoneId: 'Europe/Dublin', serviceWorkers: 'allow' as const },
};
const EVENING = '2027-04-09T18:00:00+01:00';
/** An order of which all that is missing is made on the Saturday. */
const READY_THAT_DAY = '27-016';

/** The server ends and begins again just before these minutes; between the other two nobody answers the phone. */
const KILLED_AT = [9 * 60 + 14, 11 * 60 + 30];
const NO_SIGNAL = { from: 10 * 60 + 14, to: 10 * 60 + 33 };

/**
 * The demo on its Friday evening, looked at by a phone, with a clock for both that the test sets. The server can be ended, and
 * begins again as a program does that has only its file.
 */
const yardServed = async () => {
  const url = temporaryUrl();
  const database = await temporaryDatabase(url);
  await database.write((tx) => seedDemo(tx, EVENING.slice(0, 10), EVENING));
  const clock = { now: EVENING };
  const begin = async () => {
    const own = await openDatabase({ url });
    const { fetch } = createApp({ database: own, now: () => clock.now });
    return { fetch, end: () => own.close() };
  };
  let program = await begin();
  const server = await restartedServer({ fetch: (...asked) => program.fetch(...asked) });
  onTestFinished(() => program.end());
  const killed = async () => {
    await server.stop();
    await program.end();
    program = await begin();
    await server.start();
  };
  const { page, complaints } = await watchedPage(browser, PHONE);
  const at = async (now: string) => {
    clock.now = now;
    await page.clock.setFixedTime(now);
  };
  return { database, clock, url: server.url, killed, page, complaints, at };
};

const isToday = (instant: string): boolean => instant.slice(0, 10) === demoAt('00:00').slice(0, 10);

/** Moulds poured today by a plan, each as often as it is, in order. */
const mouldsToday = ({ pours }: PlanFile): string[] =>
  pours
    .filter(({ fillEnd }) => isToday(fillEnd))
    .map(({ mould }) => mould)
    .sort();

/** Moulds that were recorded as poured, by the words of the log: "900 no. 1 and 900 no. 2 poured". */
const mouldsRecorded = async (database: Database): Promise<string[]> =>
  (await database.read((tx) => recentHeads(tx, 200)))
    .filter(({ kind }) => kind === 'poured')
    .flatMap(({ words }) => words.replace(/ poured.*$/, '').split(/, | and /))
    .sort();

const DONE = ['prepared', 'coated', 'poured', 'stripped', 'packed']
  .map((what) => `form[action="/today/${what}"]`)
  .join();

/** The names of the taps that say what is over by then was done, in order; run in the browser, where it unfolds all steps. */
const dueTaps = (page: Page, by: string): Promise<string[]> =>
  page.locator('.steps > .step').evaluateAll(
    (steps, { done, clock }) =>
      steps.flatMap((step) => {
        for (let fold = step.closest('details'); fold; fold = fold.parentElement?.closest('details') ?? null)
          fold.open = true;
        const until = step.querySelector('.step-time')?.textContent?.split(' to ').at(-1)?.trim() ?? '24:00';
        const name = step.querySelector(done)?.querySelector('button:enabled')?.getAttribute('aria-label');
        return name && until.padStart(5, '0') <= clock ? [name] : [];
      }),
    { done: DONE, clock: by },
  );

/** Records all that is over by then, one tap after another, as the page goes on. */
const tapAll = async (page: Page, url: string, by: string): Promise<void> => {
  await page.goto(`${url}/today`);
  for (let [name] = await dueTaps(page, by); name !== undefined; [name] = await dueTaps(page, by)) {
    const tap = page.locator(DONE).getByRole('button', { name, exact: true }).first();
    await tap.tap();
    await page
      .locator('.notice, .form-errors')
      .filter({ hasText: /Undo|written|recorded/ })
      .first()
      .waitFor();
    expect([name, await page.locator('.form-errors').allTextContents()]).toEqual([name, []]);
    await page.goto(`${url}/today`);
  }
};

const countClips = async (page: Page, url: string, clips: string): Promise<void> => {
  await page.goto(`${url}/buying`);
  const clip = page.locator('form[action="/buying/counted"]:has([value="corner-clip"])');
  await page.getByLabel('Count: Corner clip', { exact: true }).click();
  await clip.locator('[name=counted]').fill(clips);
  await clip.locator('button').click();
  await page.getByText(/^Corner clip counted/).waitFor();
};

const takeOrder = async (page: Page, url: string): Promise<void> => {
  await page.goto(`${url}/orders/new?what=kit%3Atrough&number=1`);
  await page.fill('#customer', 'Brid Casey');
  await page.click('.buttons .button.main');
  await page.waitForURL(/orders\/27-\d+\?/);
};

/** How late each order is whose date was given to its customer. */
const daysLate = ({ orders }: PlanFile, given: ReadonlySet<string>) =>
  new Map(orders.filter(({ id }) => given.has(id)).map((order) => [order.id, order.daysLate]));

/** The evening before: what is to be got ready is looked at, and one mould is. */
const getReady = async (page: Page, url: string): Promise<void> => {
  await page.goto(`${url}/today`);
  expect(await page.textContent('.evening h2')).toContain('Before Saturday:');
  await page.getByText('Moulds that can be coated or set up already').tap();
  await page
    .getByRole('button', { name: /^Ready to pour: / })
    .first()
    .tap();
  await page
    .locator('.notice')
    .getByText(/is ready to pour\.$/)
    .waitFor();
  await page.getByText('This as a sheet, to print').tap();
  await page.locator('.sheet.evening').waitFor();
};

const waiting = (page: Page) => page.locator('#waiting li');

/** Without a signal, taps what is over by then on the page that the phone has kept; gives how many taps wait. */
const tapKept = async (page: Page, url: string, by: string): Promise<number> => {
  if (!(await page.locator('.as-kept').count())) await page.goto(`${url}/today`);
  await page.locator('.as-kept').waitFor();
  for (const name of await dueTaps(page, by)) {
    const before = await waiting(page).count();
    await page.locator(DONE).getByRole('button', { name, exact: true }).first().tap();
    await waiting(page).nth(before).waitFor();
  }
  return waiting(page).count();
};

/** The signal is back: what waited is sent, and nothing of it is left or refused. */
const signalBack = async (page: Page, url: string): Promise<void> => {
  await page.context().setOffline(false);
  await page.goto(`${url}/today`);
  await waiting(page).first().waitFor({ state: 'detached' });
  expect(await page.isVisible('#not-sent')).toBe(false);
};

const handOver = async (page: Page, url: string): Promise<void> => {
  await page.goto(`${url}/orders/${READY_THAT_DAY}`);
  await page.getByRole('button', { name: 'Handed over' }).tap();
  await page
    .locator('.notice')
    .getByText(/handed over/i)
    .first()
    .waitFor();
};

/** What a phone notes of a server that is not there. */
const isNoServer = (complaint: string): boolean => /net::ERR_|Failed to fetch|Load failed/.test(complaint);

test('a Saturday on a phone, from the evening before to handed over: nothing vanishes, signal or not, server or not', async () => {
  const { database, clock, url, killed, page, complaints, at } = await yardServed();
  const planNow = async () => (await currentPlan({ database, now: clock.now })).plan;
  await at(EVENING);
  await getReady(page, url);
  await at(demoAt('07:45'));
  const morning = await planNow();
  const planned = mouldsToday(morning);
  const given = new Set(givenOrders(await database.read(promisedDays)));
  const late = daysLate(morning, given);
  expect(morning.batches.filter(({ start }) => isToday(start)).length).toBeGreaterThan(2);
  let waited = 0;
  for (let minute = 8 * 60 + 2, tick = 0; minute < 13 * 60 + 50; minute += TICK, tick++) {
    await at(demoAt(clockText(minute)));
    if (minute >= NO_SIGNAL.from && minute <= NO_SIGNAL.to) {
      await page.context().setOffline(true);
      waited = await tapKept(page, url, clockText(minute - LATE));
      continue;
    }
    if (KILLED_AT.includes(minute)) await killed();
    if (minute - TICK <= NO_SIGNAL.to && minute > NO_SIGNAL.to) await signalBack(page, url);
    await page.goto(`${url}${PAGES[tick % PAGES.length]}`);
    if (tick % 8 === 4) await countClips(page, url, String(minute));
    if (minute === ORDERED) await takeOrder(page, url);
    await tapAll(page, url, clockText(minute - LATE));
    const pours = [...mouldsToday(await planNow()), ...(await mouldsRecorded(database))];
    const others = without(pours, planned);
    expect([clock.now, without(planned, pours)]).toEqual([clock.now, []]);
    expect([clock.now, others.length]).toEqual([clock.now, Math.min(others.length, minute < ORDERED ? 0 : NEW_PIECES)]);
  }
  expect(waited).toBeGreaterThan(0);
  expect(without(planned, await mouldsRecorded(database))).toEqual([]);
  expect(mouldsToday(await planNow())).toEqual([]);
  await page.goto(`${url}/today`);
  expect(await page.locator('#late').count()).toBe(0);
  expect(daysLate(await planNow(), given)).toEqual(late);
  await handOver(page, url);
  expect((await database.read((tx) => orderById(tx, READY_THAT_DAY)))?.status).toBe('handed over');
  expect(complaints.filter((one) => !isNoServer(one))).toEqual([]);
}, 240_000);
