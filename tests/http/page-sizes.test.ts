import type { Hono } from 'hono';
import { expect, test } from 'vitest';
import { createApp } from '../../src/http/app.ts';
import type { Background } from '../../src/usecases/core/context.ts';
import { DEMO_PAGES } from '../support/demo-pages.ts';
import { planOfOneDispatch } from '../support/one-dispatch.ts';
import { scaledYard } from '../support/scaled-yard.ts';
import { yardContext } from '../support/yard-context.ts';

/** Before anything is compressed: what a phone has to read and lay out. */
const MOST_BYTES = 100_000;

const yard = scaledYard(1000, 200);
const LATE_MORNING = '2027-03-01T11:00:00+00:00';
const EVENING = '2027-03-01T18:00:00+00:00';

/** What the demo's addresses name, and what stands for it here. */
const NAMES: readonly (readonly [RegExp, string])[] = [
  [/27-01\d/, '27-0500'],
  [/kit(s?)(%3A|\/)planter/, 'kit$1$2kit-1'],
  [/panel-900/, 'rapid-914'],
  [/1200%20no/, '1220%20no'],
  [/mixes\/thin/, 'mixes/rapid'],
  [/citric-acid/, 'mesh'],
];
/** This yard has no paper sent, no supplier, and one plain rule of hours. */
const NOT_HERE = /quote\/1|Grocer|strength|hours\/day/;
/** Answers to a question: of one order, and as long with many others. What looks for an answer takes a plan or more. */
const QUESTION = /[?&](what|holds|next)=|^\/begin|sessions$/;

const OTHER_PAGES = [
  '/count',
  '/orders?from=2027-04-01',
  '/turns?from=6&mould=40',
  '/buying?from=2',
  '/count?from=160',
];

/** Plans are made without a search; an answer to a question is still looked for when the page is there. */
const compute: Background['compute'] = async (kind, question) => {
  if (kind === 'quick plan') return planOfOneDispatch(question as never) as never;
  return /quote|odds|limits/.test(kind) ? new Promise(() => {}) : null;
};

const paths = DEMO_PAGES.filter((path) => !NOT_HERE.test(path) && !QUESTION.test(path)).map((path) =>
  NAMES.reduce((named, [theirs, ours]) => named.replace(theirs, ours), path),
);

/** A page and all that its links to the part after it lead to. */
const partsFrom = async (app: Hono, path: string): Promise<string[]> => {
  const html = await (await app.request(path)).text();
  const after = /<a href="([^"]+)"[^>]*>\w+ after<\/a>/.exec(html)?.[1];
  return after === undefined ? [html] : [html, ...(await partsFrom(app, after.replaceAll('&amp;', '&')))];
};

test('no page is longer than 100 kB with 1,000 orders and 200 moulds, whatever the time of the day', async () => {
  const { database } = await yardContext(yard);
  const background = { planMade: () => {}, improving: () => false, compute, computeForRequest: compute };
  let now = yard.yard.now;
  const app = createApp({ database, now: () => now, background });
  const sizes: [path: string, status: number, bytes: number][] = [];
  const look = async (...asked: readonly string[]) => {
    for (const path of asked) {
      const answer = await app.request(path);
      sizes.push([path, answer.status, (await answer.arrayBuffer()).byteLength]);
    }
  };
  await look(...paths, ...OTHER_PAGES);
  const walk = await partsFrom(app, '/count');
  const seen = walk.flatMap((html) => [...html.matchAll(/name="mould\d+Id" value="([^"]+)"/g)].map(([, id]) => id));
  expect(seen).toEqual(yard.moulds.map(({ id }) => id));
  expect(walk.map((html) => html.includes('On the rack'))).toEqual([false, false, true]);
  now = LATE_MORNING;
  await look('/today', '/today?list=rest&from=200', '/today?list=past&from=100');
  now = EVENING;
  await look('/today', '/today?list=empty&from=80', '/');
  expect(sizes.filter(([, status]) => status !== 200)).toEqual([]);
  expect(sizes.filter(([, , bytes]) => bytes > MOST_BYTES)).toEqual([]);
}, 180_000);
