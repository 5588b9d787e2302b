// A process of its own: serves one yard and, beside it, a bare Hono that says a word, and tells their ports.
import { mkdtempSync } from 'node:fs';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { serve } from '@hono/node-server';
import { Hono } from 'hono';
import { seedDemo } from '../../../db/demo/larch-row.ts';
import { openDatabase } from '../../../db/open.ts';
import { replaceYard } from '../../../db/stores/replace-yard.ts';
import { startBackground } from '../../../src/background.ts';
import { createApp } from '../../../src/http/app.ts';
import { currentPlan } from '../../../src/usecases/plan/make-plan.ts';
import { scaledYard } from '../../support/scaled-yard.ts';
import { DEMO_NOW } from '../../support/screens.ts';

const [orders, moulds] = process.argv.slice(2).map(Number) as [number, number];
const LIMITS = { improvementLimitMs: 600_000, questionLimitMs: 600_000 };

const yard = orders === 0 ? null : scaledYard(orders, moulds);
const now = yard ? yard.yard.now : DEMO_NOW;
const url = `file:${join(mkdtempSync(join(tmpdir(), 'pages-')), 'yard.db')}`;
const database = await openDatabase({ url });
await database.write(async (tx) => {
  if (yard) await replaceYard(tx, yard);
  else await seedDemo(tx, now.slice(0, 10), now);
});
const started = startBackground({ database, now: () => now, tell: console.error, ...LIMITS });
// Pages are measured with no search for a better plan beside them.
const { compute, computeForRequest } = started;
const background = { planMade: () => {}, improving: () => false, compute, computeForRequest };
const plan = await currentPlan({ database, now, background });

const portOf = (fetch: Hono['fetch']): Promise<number> =>
  new Promise((resolve) => {
    const server = serve({ fetch, hostname: '127.0.0.1', port: 0 }, () =>
      resolve((server.address() as AddressInfo).port),
    );
  });
const bare = new Hono().get('/', (c) => c.text('Hello'));
const { fetch } = createApp({ database, now: () => now, background });
const order = plan.yard.orders[plan.yard.orders.length >> 1]!.id;
const mould = plan.yard.moulds[0]!.id;
process.send!({ port: await portOf(fetch), barePort: await portOf(bare.fetch), order, mould });
