import { expect, onTestFinished, test } from 'vitest';
import { type Database, openDatabase } from '../../../db/open.ts';
import { updateMould } from '../../../db/stores/mould-store.ts';
import { markImproved, savePlan, storedPlan } from '../../../db/stores/plan-store.ts';
import { replaceYard } from '../../../db/stores/replace-yard.ts';
import { done, type UseCaseContext } from '../../../src/usecases/core/context.ts';
import { changing, previewing } from '../../../src/usecases/plan/changing.ts';
import { currentPlan } from '../../../src/usecases/plan/make-plan.ts';
import { smallYard } from '../../support/small-yard.ts';
import { countedNow, moreOf } from '../../support/stock-set.ts';
import { temporaryDatabase, temporaryUrl } from '../../support/temporary-database.ts';
import { withWorsePlan, worsePlan } from '../../support/worse-plan.ts';
import { yardContext } from '../../support/yard-context.ts';

const damage = (context: UseCaseContext) =>
  changing(context, { kind: 'mould damaged', words: '900 no. 1 marked damaged' }, async (tx) => {
    await updateMould(tx, '900 no. 1', { condition: 'damaged' });
    return done(null);
  });

/** How many statements a piece of work runs. */
const counted = (database: Database) => {
  let statements = 0;
  const read: Database['read'] = (work) =>
    database.read((tx) => {
      const all = new Proxy(tx, {
        get: (target, name) => {
          if (name === 'select') statements += 1;
          const value = Reflect.get(target, name);
          return typeof value === 'function' ? value.bind(target) : value;
        },
      });
      return work(all);
    });
  return { database: { ...database, read }, statements: () => statements };
};

test('a request after another reads neither the plan nor the yard again', async () => {
  const context = await yardContext();
  const { database, statements } = counted(context.database);
  const first = await currentPlan({ ...context, database });
  await currentPlan({ ...context, database });
  const before = statements();
  const again = await currentPlan({ ...context, database });
  expect(statements() - before).toBe(2);
  expect(again.plan).toEqual(first.plan);
  expect((await currentPlan({ ...context, database })).yard).toBe(again.yard);
});

test('a request after a change has the plan and the yard of that change at once', async () => {
  const context = await yardContext();
  await currentPlan(context);
  const changed = await damage(context);
  if (!changed.ok) throw new Error('refused');
  const { plan, yard } = await currentPlan(context);
  expect(plan).toBe(changed.value.plan);
  expect(yard.moulds[0]).toMatchObject({ id: '900 no. 1', condition: 'damaged' });
});

test('of a change that was only tried, refused or failed nothing is kept', async () => {
  const context = await yardContext();
  await currentPlan(context);
  const before = await currentPlan(context);
  await previewing(context, { kind: 'counted', words: '' }, async (tx) => {
    await countedNow(tx, 'mortar', 1);
    return done(null);
  });
  const failing = changing(context, { kind: 'counted', words: '' }, async (tx) => {
    await countedNow(tx, 'mortar', 2);
    throw new Error('no');
  });
  await expect(failing).rejects.toThrow('no');
  expect(await currentPlan(context)).toEqual(before);
  // The next change gets the revision that the one only tried would have had.
  await changing(context, { kind: 'counted', words: '' }, async (tx) => {
    await moreOf(tx, 'mortar', 1);
    return done(null);
  });
  const { yard, revision } = await currentPlan(context);
  expect([revision, yard.materials[0]?.onHand]).toEqual([before.revision + 1, 21]);
});

test('what another process changes shows with the next request, and so does a better plan it found', async () => {
  const url = temporaryUrl();
  const [ours, theirs] = [await temporaryDatabase(url), await openDatabase({ url })];
  onTestFinished(() => theirs.close());
  const { now } = smallYard().yard;
  await ours.write((tx) => replaceYard(tx, smallYard()));
  await currentPlan({ database: ours, now });
  await damage({ database: theirs, now });
  const { plan, yard } = await currentPlan({ database: ours, now });
  expect(yard.moulds[0]?.condition).toBe('damaged');
  expect(plan).toEqual((await theirs.read(storedPlan))?.plan);
  const other = { ...plan, score: { ...plan.score, bags: plan.score.bags + 1 } };
  await theirs.write(async (tx) => savePlan(tx, { ...(await storedPlan(tx))!, plan: other }));
  expect((await currentPlan({ database: ours, now })).plan).toEqual(other);
});

test('what is written past the changes of the program shows as well', async () => {
  const context = await yardContext();
  await currentPlan(context);
  await context.database.write((tx) => countedNow(tx, 'mortar', 7));
  expect((await currentPlan(context)).yard.materials[0]?.onHand).toBe(7);
});

test('a plan that is marked improved is the same plan, and known to be improved', async () => {
  const context = await withWorsePlan();
  const before = await currentPlan(context);
  expect(before.plan).toEqual(worsePlan());
  await context.database.write(markImproved);
  const { plan, cached } = await currentPlan(context);
  expect(plan).toBe(before.plan);
  expect(cached.stored.improved).toBe(true);
});

test('another minute is another now in the data, and the same plan', async () => {
  const context = await yardContext();
  const { plan } = await currentPlan(context);
  const later = '2027-04-08T09:30:00+01:00';
  const shown = await currentPlan({ ...context, now: later });
  expect([shown.plan === plan, shown.yard.yard.now, shown.now]).toEqual([true, later, context.now]);
  expect((await currentPlan(context)).yard.yard.now).toBe(context.now);
});
