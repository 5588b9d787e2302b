import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { type Database, openDatabase } from '../../db/open.ts';
import { replaceYard } from '../../db/stores/replace-yard.ts';
import type { YardFile } from '../../shared/yard-file.ts';
import { startBackground } from '../../src/background.ts';
import { createApp } from '../../src/http/app.ts';
import { planThread } from '../../src/plan-thread.ts';
import type { Background } from '../../src/usecases/core/context.ts';
import { currentPlan } from '../../src/usecases/plan/make-plan.ts';
import { scaledYard } from '../support/scaled-yard.ts';
import { type Block, type BlockWatch, watchBlocks } from './block-watch.ts';
import { median, type Row } from './table.ts';

/** Orders and moulds of the yards that are measured. */
export const REQUEST_YARDS: readonly (readonly [orders: number, moulds: number])[] = [
  [15, 24],
  [120, 24],
  [1000, 200],
];
/** The first of each kind meets code that was never run, and is told apart from these. */
const RUNS = 4;
const AIM = 'no block over 50 ms';
const LIMITS = { improvementLimitMs: 600_000, questionLimitMs: 60_000 };

interface Server {
  yard: YardFile;
  database: Database;
  background: Background & { close(): Promise<void> };
  app: ReturnType<typeof createApp>;
  /** What the clock of the yard shows. */
  clock: { now: string };
}

/** One request, made anew for each run: nothing can be done twice. */
interface Asked {
  what: string;
  make: (server: Server, run: number) => Promise<Request> | Request;
}

const get = (what: string, path: string): Asked => ({ what, make: () => new Request(`http://yard${path}`) });

const post = (path: string, fields: Record<string, string>): Request =>
  new Request(`http://yard${path}`, { method: 'POST', body: new URLSearchParams(fields) });

/** The next batch of the plan that finds its moulds empty, as the list of today sends it, when the last of them is full. */
const nextPour = async ({ database, clock }: Server): Promise<Request> => {
  const { plan, yard } = await currentPlan({ database, now: clock.now });
  const full = new Set(yard.inMould.map(({ mould }) => mould));
  const poursOf = (batch: string) => plan.pours.filter((pour) => pour.batch === batch);
  const batch = [...plan.batches]
    .sort((a, b) => a.start.localeCompare(b.start))
    .find(({ id, start }) => start >= clock.now && poursOf(id).every(({ mould }) => !full.has(mould)));
  if (!batch) throw new Error('the plan has nothing left to pour');
  const pours = poursOf(batch.id);
  clock.now =
    pours
      .map(({ fillEnd }) => fillEnd)
      .sort((a, b) => a.localeCompare(b))
      .at(-1) ?? clock.now;
  const rows = pours.flatMap(({ mould, casting, order = '' }, row) => [
    ...[
      [`mould${row}`, mould],
      [`casting${row}`, casting],
      [`order${row}`, order],
      [`filled${row}`, 'yes'],
    ],
  ]);
  return post('/today/poured', { ...Object.fromEntries(rows), bags: String(batch.bags) });
};

const ASKED: readonly Asked[] = [
  get('first page', '/'),
  get('orders', '/orders'),
  {
    what: 'one order',
    make: ({ yard }) => new Request(`http://yard/orders/${yard.orders[yard.orders.length >> 1]!.id}`),
  },
  get('moulds', '/moulds'),
  get('turns', '/turns'),
  get('buying', '/buying'),
  get('today', '/today'),
  get('your yard', '/yard'),
  {
    what: 'taking an order',
    make: ({ yard }, run) =>
      post('/orders', { customer: `Customer ${run}`, what0: `kit:${yard.kits[0]!.id}`, quantity0: '1' }),
  },
  {
    what: 'marking a mould damaged',
    make: ({ yard }, run) => post(`/moulds/${encodeURIComponent(yard.moulds.at(-1 - run)!.id)}/damaged`, {}),
  },
  { what: 'receiving material', make: (_, run) => post('/buying/arrived', { goods: String(run + 1), came: '' }) },
  {
    what: 'recording another pour',
    make: ({ yard }, run) => {
      const { id, setFor } = yard.moulds.at(-10 - run)!;
      return post('/today/poured', { other: 'yes', mould0: id, casting0: setFor, filled0: 'yes' });
    },
  },
  { what: 'recording a pour as planned', make: nextPour },
];

const serverOf = async (orders: number, moulds: number, folder: string): Promise<Server> => {
  const scaled = scaledYard(orders, moulds);
  const coming = Array.from({ length: RUNS + 1 }, () => ({ material: 'mesh', quantity: 6, on: '2027-03-05' }));
  const yard = { ...scaled, incoming: coming };
  const database = await openDatabase({ url: `file:${join(folder, `${orders}.db`)}` });
  await database.write((tx) => replaceYard(tx, yard));
  const clock = { now: yard.yard.now };
  const parts = { database, now: () => clock.now, tell: console.error };
  const background = startBackground({ ...parts, ...LIMITS });
  return { yard, database, background, app: createApp({ database, now: () => clock.now, background }), clock };
};

/** Sees to it that a search is always under way: when the server's own has ended, one of the same kind. */
const alwaysSearching = (background: Background) => {
  const search = planThread({ limitMs: LIMITS.improvementLimitMs, tell: console.error, standsBack: true });
  const other = scaledYard(120, 24);
  let on = true;
  const searching = async () => {
    while (on)
      if (background.improving()) await pause(20);
      else await search.compute('better plan', { yard: other });
  };
  const all = searching();
  return async () => {
    on = false;
    await search.close();
    await all;
  };
};

const figure = (blocks: readonly Block[]): string => {
  const [first, ...rest] = blocks.map(({ ms }) => ms);
  const wall = `${Math.round(median(rest))} ms, at most ${Math.round(Math.max(...rest))} (the first ${Math.round(first!)})`;
  const ran = blocks.slice(1).flatMap(({ ranMs }) => ranMs ?? []);
  return ran.length === 0 ? wall : `${wall}; at work at most ${Math.round(Math.max(...ran))} ms`;
};

/** The longest time nobody else was served while this request was, its page read to the end. */
const blockedBy = async (server: Server, { what, make }: Asked, run: number, watch: BlockWatch) => {
  const request = await make(server, run);
  await pause(30);
  const between = watch.longest();
  const response = await server.app.request(request);
  await response.text();
  if (response.status !== 200 && response.status !== 303)
    throw new Error(`${what} was answered with ${response.status}`);
  await pause(3);
  return { between, during: watch.longest() };
};

const measured = async (server: Server, watch: BlockWatch): Promise<Row[]> => {
  const between: Block[] = [];
  const rows: Row[] = [];
  for (const asked of ASKED) {
    const blocks: Block[] = [];
    for (let run = 0; run <= RUNS; run += 1) {
      const blocked = await blockedBy(server, asked, run, watch);
      blocks.push(blocked.during);
      between.push(blocked.between);
    }
    rows.push({ what: asked.what, figure: figure(blocks), aim: AIM });
  }
  return [...rows, { what: 'between requests', figure: figure(between), aim: AIM }];
};

/** How long requests block each other on a yard of so many orders, with a search for a better plan beside. */
export const requestRows = async (orders: number, moulds: number): Promise<Row[]> => {
  const folder = mkdtempSync(join(tmpdir(), 'requests-'));
  const server = await serverOf(orders, moulds, folder);
  const stopSearching = alwaysSearching(server.background);
  const watch = watchBlocks();
  try {
    return await measured(server, watch);
  } finally {
    watch.stop();
    await stopSearching();
    await server.background.close();
    await server.database.close();
    rmSync(folder, { recursive: true });
  }
};
