import { expect, test } from 'vitest';
import { replaceYard } from '../../../db/stores/replace-yard.ts';
import type { Background, UseCaseContext } from '../../../src/usecases/core/context.ts';
import { done } from '../../../src/usecases/core/context.ts';
import { changing } from '../../../src/usecases/plan/changing.ts';
import { improvePlan } from '../../../src/usecases/plan/improve-plan.ts';
import { currentPlan } from '../../../src/usecases/plan/make-plan.ts';
import { temporaryDatabase } from '../../support/temporary-database.ts';
import { storeWorsePlan, worsePlanYard } from '../../support/worse-plan.ts';

/** Somebody looks for better plans, but not just now. */
const later: Background = {
  planMade: () => {},
  improving: () => true,
  compute: async () => null,
  computeForRequest: async () => null,
};

const FRIDAY = '2027-04-09T20:00:00+01:00';

/** A yard of which the first plan was made in a hurry on Friday evening, twelve hours before Saturday's session. */
const hurriedYard = async (background?: Background): Promise<UseCaseContext> => {
  const database = await temporaryDatabase();
  await database.write((tx) => replaceYard(tx, { ...worsePlanYard, yard: { ...worsePlanYard.yard, now: FRIDAY } }));
  const context = { database, now: FRIDAY, ...(background ? { background } : {}) };
  await currentPlan(context);
  return context;
};

const fixedBatches = async (context: UseCaseContext): Promise<number> =>
  (await currentPlan(context)).yard.keep?.batches.length ?? 0;

const change = (context: UseCaseContext) =>
  changing(context, { kind: 'counted', words: 'Nothing' }, async () => done(null));

test('a session of a plan that was made in a hurry is fixed once a longer search has been through it', async () => {
  const context = await hurriedYard(later);
  expect(await fixedBatches(context)).toBe(0);
  await change(context);
  expect(await fixedBatches(context)).toBe(0);
  await improvePlan(context);
  expect(await fixedBatches(context)).toBeGreaterThan(0);
});

test('from then on it stays fixed, through changes that are not searched yet', async () => {
  const context = await hurriedYard(later);
  await improvePlan(context);
  const { batches } = (await currentPlan(context)).yard.keep!;
  for (const minute of ['20:10', '20:20']) {
    const at = { ...context, now: FRIDAY.replace('20:00', minute) };
    await change(at);
    expect((await currentPlan(at)).yard.keep!.batches).toEqual(batches);
  }
});

test('the search is free to better what nobody has searched, and what it finds is fixed', async () => {
  const context = await hurriedYard(later);
  await storeWorsePlan(context.database);
  const pours = async () => (await currentPlan(context)).plan.pours.filter(({ fillStart }) => fillStart < '2027-04-11');
  const hurried = await pours();
  expect(await improvePlan(context)).toBe('improved');
  const searched = await pours();
  expect(searched.length).toBeGreaterThan(hurried.length);
  expect((await currentPlan(context)).yard.keep?.pours).toHaveLength(searched.length);
});

test('it is fixed when it begins, searched or not', async () => {
  const context = await hurriedYard(later);
  const at = { ...context, now: '2027-04-10T08:00:00+01:00' };
  expect(await fixedBatches(at)).toBeGreaterThan(0);
});

test('where nothing looks for better plans, the one there is counts', async () => {
  expect(await fixedBatches(await hurriedYard())).toBeGreaterThan(0);
});
