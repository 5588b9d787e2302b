import { expect, test, vi } from 'vitest';
import { storedPlan } from '../../../db/stores/plan-store.ts';
import { bumpRevision } from '../../../db/stores/yard-store.ts';
import { type Compute, computeWithoutThread } from '../../../src/usecases/core/computations.ts';
import { keepImproving } from '../../../src/usecases/plan/keep-improving.ts';
import { withWorsePlan, worsePlan } from '../../support/worse-plan.ts';

/** A search that only ends when it is told to, or is given up. */
const slowSearch = () => {
  const under = new Set<(answer: null) => void>();
  let most = 0;
  let begun = 0;
  const compute: Compute = () => {
    begun += 1;
    return new Promise((resolve) => {
      under.add(resolve);
      most = Math.max(most, under.size);
    });
  };
  const giveUp = () => {
    for (const resolve of under) resolve(null);
    under.clear();
  };
  return { compute: compute, giveUp, seen: () => ({ begun, most, running: under.size }) };
};

const improving = async (search: { compute: Compute; giveUp: () => void }) => {
  const context = await withWorsePlan();
  const told: string[] = [];
  const parts = { database: context.database, now: () => context.now, tell: (words: string) => void told.push(words) };
  return { ...keepImproving({ ...parts, ...search }), context, told };
};

test('a plan made in a hurry is improved, and then there is nothing more to do', async () => {
  const {
    planMade,
    improving: isImproving,
    context,
    close,
  } = await improving({ compute: computeWithoutThread, giveUp: () => {} });
  planMade();
  expect(isImproving()).toBe(true);
  await vi.waitFor(() => expect(isImproving()).toBe(false), 10_000);
  const stored = await context.database.read(storedPlan);
  expect(stored?.plan.score.weightedDaysLate).toBeLessThan(worsePlan().score.weightedDaysLate);
  await close();
});

test('one search at a time, and the newest plan wins', async () => {
  const search = slowSearch();
  const { planMade, close } = await improving(search);
  planMade();
  await vi.waitFor(() => expect(search.seen().running).toBe(1));
  for (let again = 0; again < 5; again += 1) planMade();
  await vi.waitFor(() => expect(search.seen()).toEqual({ begun: 2, most: 1, running: 1 }));
  await close();
  expect(search.seen().running).toBe(0);
});

test('closed, nothing is searched for any more and nothing is written', async () => {
  const search = slowSearch();
  const { planMade, improving: isImproving, context, close } = await improving(search);
  planMade();
  await vi.waitFor(() => expect(search.seen().running).toBe(1));
  await close();
  expect(isImproving()).toBe(false);
  planMade();
  expect(isImproving()).toBe(false);
  expect(await context.database.read(storedPlan)).toMatchObject({ improved: false });
});

test('a search that fails is told in words, and the next plan is searched for all the same', async () => {
  const failing: Compute = () => Promise.reject(new Error('out of paper'));
  const { planMade, improving: isImproving, told, close } = await improving({ compute: failing, giveUp: () => {} });
  for (let round = 1; round <= 2; round += 1) {
    planMade();
    await vi.waitFor(() => expect(isImproving()).toBe(false));
    expect(told).toHaveLength(round);
  }
  expect(told[0]).toMatch(/^No better plan could be looked for: Error: out of paper\n {4}at /);
  await close();
});

test('a plan that has to be made first is made where the requests have theirs made', async () => {
  const context = await withWorsePlan();
  await context.database.write(bumpRevision);
  const asked: string[] = [];
  const computeForRequest: Compute = (kind, question) => {
    asked.push(kind);
    return computeWithoutThread(kind, question);
  };
  const parts = { database: context.database, now: () => context.now, tell: () => {}, giveUp: () => {} };
  const {
    planMade,
    improving: isImproving,
    close,
  } = keepImproving({ ...parts, compute: computeWithoutThread, computeForRequest });
  planMade();
  await vi.waitFor(() => expect(isImproving()).toBe(false), 10_000);
  expect(asked).toEqual(['quick plan']);
  expect(await context.database.read(storedPlan)).toMatchObject({ revision: 1, improved: true });
  await close();
});
