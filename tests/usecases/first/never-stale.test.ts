import { expect, test } from 'vitest';
import { openDatabase } from '../../../db/open.ts';
import { readArchive } from '../../../shared/archive.ts';
import { createApp } from '../../../src/http/app.ts';
import { askWhen } from '../../../src/usecases/first/ask-when.ts';
import type { PageVisitor } from '../../bench/torture/page-visitor.ts';
import { randomAct } from '../../bench/torture/random-act.ts';
import { diceOf } from '../../support/random-yard/dice.ts';
import { DEMO_NOW, withDemo } from '../../support/screens.ts';
import { temporaryDatabase, temporaryUrl } from '../../support/temporary-database.ts';

const ACTS = 14;
/** Between one act and the next: within a session, and from one day to the next. */
const MINUTES = [1, 4, 30, 400];
const PAGES = [
  ...[
    '/today',
    '/today/sheet',
    '/today/evening',
    '/orders',
    '/orders/past',
    '/orders/27-015',
    '/moulds',
    '/moulds/labels',
  ],
  ...['/mould/1200%20no.%201', '/turns', '/buying', '/count', '/pieces', '/prices', '/trace', '/changes', '/going-out'],
  ...[
    '/yard',
    '/yard/moulds',
    '/yard/stock',
    '/yard/panels',
    '/yard/kits',
    '/yard/mixes',
    '/yard/hours',
    '/kits/by-size',
  ],
];

const textsOf = async (app: ReturnType<typeof createApp>, paths: readonly string[]) => {
  const texts: [string, string][] = [];
  for (const path of paths) texts.push([path, await (await app.request(path)).text()]);
  return texts;
};

const LINES = [{ row: 0, line: { kit: 'planter', quantity: 1 } }];

test('after whatever act, and whatever time, questions and pages are answered as to whoever never asked before', {
  timeout: 300_000,
}, async () => {
  const url = temporaryUrl();
  const database = await temporaryDatabase(url);
  await database.write(withDemo);
  let at = Date.parse(DEMO_NOW);
  const now = () => `${new Date(at).toISOString().slice(0, 16)}:00Z`;
  const app = createApp({ database, now });
  const page = async (path: string) => (await app.request(path)).text();
  const dice = diceOf(11);
  const changes: number[] = [];
  let done = 0;
  for (let tries = 0; done < ACTS && tries < 80; tries += 1) {
    const read = readArchive(JSON.parse(await page('/yard/files/archive.json')));
    if (!read.ok) throw new Error('the saved yard has faults');
    const visitor = { page } as PageVisitor;
    const act = await randomAct({ dice, visitor, yard: read.archive, today: now().slice(0, 10), changes });
    if (!act) continue;
    const answer = await app.request(act.action, { method: 'POST', body: new URLSearchParams(act.fields) });
    if (answer.status !== 303) continue;
    done += 1;
    const change = /[?&]done=(\d+)/.exec(answer.headers.get('location') ?? '')?.[1];
    if (change) changes.push(Number(change));
    const paths = dice.some(PAGES, 5);
    for (const minutes of [0, dice.pick(MINUTES)]) {
      at += minutes * 60_000;
      const kept = await askWhen({ database, now: now() }, LINES);
      const other = await openDatabase({ url });
      const anew = await askWhen({ database: other, now: now() }, LINES);
      const [shown, drawnAnew] = await Promise.all(
        [app, createApp({ database: other, now })].map((of) => textsOf(of, paths)),
      );
      await other.close();
      expect(shown).toEqual(drawnAnew);
      expect(kept, `${act.action}, ${minutes} minutes later`).toEqual(anew);
    }
  }
  expect(done).toBe(ACTS);
});
