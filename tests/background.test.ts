import { readdirSync, readFileSync } from 'node:fs';
import { setImmediate } from 'node:timers/promises';
import { expect, onTestFinished, test, vi } from 'vitest';
import type { Database } from '../db/open.ts';
import { storedPlan } from '../db/stores/plan-store.ts';
import { replaceYard } from '../db/stores/replace-yard.ts';
import { startBackground } from '../src/background.ts';
import { showFirst } from '../src/usecases/first/show-first.ts';
import { currentPlan } from '../src/usecases/plan/make-plan.ts';
import { scaledYard } from './support/scaled-yard.ts';
import { smallYard } from './support/small-yard.ts';
import { temporaryDatabase } from './support/temporary-database.ts';
import { withWorsePlan, worsePlan } from './support/worse-plan.ts';

const beside = (database: Database, now: string) => {
  const told: string[] = [];
  const limits = { improvementLimitMs: 60_000, questionLimitMs: 20_000 };
  const background = startBackground({ database, now: () => now, tell: (words) => void told.push(words), ...limits });
  onTestFinished(() => background.close());
  return { background, told };
};

test('a stored plan is improved in a thread, and the next view shows the better one', async () => {
  const context = await withWorsePlan();
  const { background, told } = beside(context.database, context.now);
  background.planMade();
  expect((await currentPlan(context)).plan).toEqual(worsePlan());
  await vi.waitFor(() => expect(background.improving()).toBe(false), 20_000);
  const { plan } = await currentPlan({ ...context, background });
  expect(plan.score.weightedDaysLate).toBeLessThan(worsePlan().score.weightedDaysLate);
  expect(told).toEqual([]);
});

/** A search through it takes far longer than the test. */
const largeYard = async () => {
  const yard = scaledYard(120, 24);
  const database = await temporaryDatabase();
  await database.write((tx) => replaceYard(tx, yard));
  return { database, now: yard.yard.now };
};

test('while a better plan is looked for, requests are answered and none waits for the search', async () => {
  const context = await largeYard();
  await currentPlan(context);
  const { background } = beside(context.database, context.now);
  background.planMade();
  for (let request = 0; request < 3; request += 1) await showFirst({ ...context, background });
  // On the thread of the requests the search would let nothing else have a turn before it has ended.
  for (let turn = 0; turn < 1000; turn += 1) await setImmediate();
  expect(background.improving()).toBe(true);
});

test('closing ends the search that is under way, and leaves the plan as it was', async () => {
  const context = await largeYard();
  await currentPlan(context);
  const before = await context.database.read(storedPlan);
  const { background, told } = beside(context.database, context.now);
  background.planMade();
  await showFirst({ ...context, background });
  expect(background.improving()).toBe(true);
  // One that waited for the search would find its better plan stored, or be told that it was given up.
  await background.close();
  expect(background.improving()).toBe(false);
  expect(await context.database.read(storedPlan)).toEqual(before);
  expect(told).toEqual([]);
});

/** How little each thread of this process insists on a processor, as Linux counts it: 0 is as much as any other. */
const niceOfThreads = (): number[] =>
  readdirSync('/proc/self/task').map((thread) => {
    const [, after = ''] = readFileSync(`/proc/self/task/${thread}/stat`, 'utf8').split(') ');
    return Number(after.split(' ')[16]);
  });

test.runIf(process.platform === 'linux')('the search stands back for the requests, and nothing else does', async () => {
  const context = await largeYard();
  await currentPlan(context);
  const before = Math.max(...niceOfThreads());
  const { background } = beside(context.database, context.now);
  background.planMade();
  await vi.waitFor(() => expect(niceOfThreads().filter((nice) => nice > before)).toHaveLength(1), 20_000);
  await background.computeForRequest('usual session', { yard: smallYard() });
  expect(niceOfThreads().filter((nice) => nice > before)).toHaveLength(1);
});
