import { expect, test } from 'vitest';
import { openNotices, recentChanges } from '../../../db/stores/change-store.ts';
import { savePlan, storedPlan } from '../../../db/stores/plan-store.ts';
import { replaceYard } from '../../../db/stores/replace-yard.ts';
import { bumpRevision } from '../../../db/stores/yard-store.ts';
import { planYard } from '../../../src/engine/plan.ts';
import { showChange } from '../../../src/usecases/changes/show-change.ts';
import { type Compute, computeWithoutThread } from '../../../src/usecases/core/computations.ts';
import { done, type UseCaseContext } from '../../../src/usecases/core/context.ts';
import { changing } from '../../../src/usecases/plan/changing.ts';
import { giveUpImproving, improvePlan } from '../../../src/usecases/plan/improve-plan.ts';
import { currentPlan } from '../../../src/usecases/plan/make-plan.ts';
import { fixHours } from '../../../src/usecases/yard/fix-hours.ts';
import { demoAt, demoSaturday, namesOf } from '../../support/demo-saturday.ts';
import { moreOf } from '../../support/stock-set.ts';
import { temporaryDatabase } from '../../support/temporary-database.ts';
import { storeWorsePlan, withWorsePlan, worsePlan, worsePlanYard } from '../../support/worse-plan.ts';

const stored = ({ database }: UseCaseContext) => database.read(storedPlan);

/** Finds an answer, and then something happens before it is given. */
const computeWhile =
  (happens: () => Promise<unknown>): Compute =>
  async (kind, question) => {
    const answer = await computeWithoutThread(kind, question);
    await happens();
    return answer;
  };

test('a better plan takes the place of the stored one, and the date it brings forward is told', async () => {
  const context = await withWorsePlan();
  const before = await stored(context);
  expect(before?.plan.score.weightedDaysLate).toBe(worsePlan().score.weightedDaysLate);
  expect(await improvePlan(context)).toBe('improved');
  const after = await stored(context);
  expect(after?.plan.score.weightedDaysLate).toBeLessThan(before?.plan.score.weightedDaysLate ?? 0);
  expect(after).toMatchObject({ revision: before?.revision, now: before?.now, improved: true });
  await context.database.read(async (tx) => {
    const [change] = await recentChanges(tx, 1);
    expect(change).toMatchObject({ kind: 'better plan found', words: 'A better plan was found' });
    expect(change?.after.map(({ order, completesOn }) => [order, completesOn])).toEqual([['27-001', '2027-04-17']]);
    const notices = await openNotices(tx);
    expect(notices.map(({ words }) => words)).toEqual([
      'A better plan was found. School garden is ready Sat 17 Apr now, in time.',
    ]);
  });
  expect(await improvePlan(context)).toBe('nothing to do');
});

test('a plan that is as good as it gets is not looked at twice', async () => {
  const context = await withWorsePlan();
  await improvePlan(context);
  await changing(context, { kind: 'counted', words: 'A bag more' }, async (tx) => {
    await moreOf(tx, 'mortar', 1);
    return done(null);
  });
  const quick = await stored(context);
  expect(await improvePlan(context)).toBe('as good as it gets');
  expect(await stored(context)).toEqual({ ...quick, improved: true });
  expect(await improvePlan(context)).toBe('nothing to do');
});

test('a yard with work that is not recorded is searched as one in which it was done, and the work stays', async () => {
  const { context, late } = await demoSaturday();
  await fixHours(context('13:40'), 12);
  const steps = namesOf(await late('13:41'));
  const quick = await stored(context('13:41'));
  expect(quick?.improved).toBe(false);
  const [first] = quick!.plan.batches;
  const asked: string[][] = [];
  await improvePlan(context('13:42'), async (kind, question) => {
    if ('yard' in question && 'moulds' in question.yard)
      asked.push(question.yard.inMould.flatMap(({ mould, filledAt }) => [mould, filledAt]));
    return computeWithoutThread(kind, question);
  });
  expect(asked).toHaveLength(1);
  // The yard that was searched has a piece of a batch that nobody recorded.
  const poured = quick!.plan.pours.filter(({ fillEnd }) => fillEnd < demoAt('13:30') && fillEnd >= first!.start);
  expect(poured.some(({ fillEnd }) => asked[0]!.includes(fillEnd))).toBe(true);
  expect((await stored(context('13:42')))?.improved).toBe(true);
  expect(namesOf(await late('13:43'))).toEqual(steps);
});

test('what was changed meanwhile makes a better plan of the old data worth nothing', async () => {
  const context = await withWorsePlan();
  const outcome = await improvePlan(
    context,
    computeWhile(() =>
      changing(context, { kind: 'counted', words: 'A bag more' }, async (tx) => {
        await moreOf(tx, 'mortar', 1);
        return done(null);
      }),
    ),
  );
  expect(outcome).toBe('as good as it gets');
  expect(await stored(context)).toMatchObject({ revision: 1, improved: false });
  const [last] = await context.database.read((tx) => recentChanges(tx, 1));
  expect(last?.kind).toBe('counted');
});

test('so does another process that changes the data and plans later', async () => {
  const context = await withWorsePlan();
  const outcome = await improvePlan(
    context,
    computeWhile(() => context.database.write(bumpRevision)),
  );
  expect(outcome).toBe('as good as it gets');
  expect((await stored(context))?.plan).toEqual(worsePlan());
});

test('a search that is given up leaves the plan alone, and it is not searched for again', async () => {
  const context = await withWorsePlan();
  expect(await improvePlan(context, async () => null)).toBe('given up');
  expect((await stored(context))?.improved).toBe(false);
  await giveUpImproving(context);
  expect(await stored(context)).toMatchObject({ plan: worsePlan(), improved: true });
});

test('a better plan found right after a change is part of what the change did, and of no later one', async () => {
  const context = await withWorsePlan();
  const countBag = async () => {
    const changed = await changing(context, { kind: 'counted', words: 'A bag more' }, async (tx) => {
      await moreOf(tx, 'mortar', 1);
      return done(null);
    });
    if (!changed.ok) throw new Error('refused');
    return changed.value.change;
  };
  const moved = async (change: number) => (await showChange(context, change))?.moved.map(({ from, to }) => [from, to]);
  await countBag();
  const second = await countBag();
  await storeWorsePlan(context.database);
  expect(await moved(second)).toEqual([]);
  await improvePlan(context);
  const third = await countBag();
  expect(await moved(second)).toEqual([['2027-04-24', '2027-04-17']]);
  expect(await moved(third)).toEqual([]);
});

/* A plan made before Saturday's session that has nothing to do in it, and a search that begins when the session is long over. */
test('a search that begins hours after the plan was made plans nothing for the hours between', async () => {
  const database = await temporaryDatabase();
  const yard = { ...worsePlanYard, yard: { ...worsePlanYard.yard, now: '2027-04-10T07:30:00+01:00' } };
  const moulds = yard.moulds.filter(({ id }) => id === '900 no. 1');
  const plan = planYard({ ...yard, moulds, closed: ['2027-04-10'] }, { effort: 'quick' });
  await database.write((tx) => replaceYard(tx, yard));
  await currentPlan({ database, now: yard.yard.now });
  await database.write(async (tx) => {
    await savePlan(tx, { ...(await storedPlan(tx))!, plan, memory: null, improved: false });
  });
  const evening = { database, now: '2027-04-10T22:30:00+01:00' };
  expect(await improvePlan(evening)).toBe('improved');
  const better = await stored(evening);
  // Two moulds make four panels on a Saturday, so that six take the 17th and the 24th.
  expect(better?.plan.orders[0]?.completesOn).toBe('2027-04-24');
  expect(better?.plan.batches.filter(({ start }) => start < evening.now)).toEqual([]);
  expect(better?.now).toBe(evening.now);
});
