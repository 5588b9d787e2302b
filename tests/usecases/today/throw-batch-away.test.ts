import { expect, test } from 'vitest';
import { countMaterial } from '../../../src/usecases/buying/count-material.ts';
import { undoChange } from '../../../src/usecases/changes/undo-change.ts';
import { currentPlan } from '../../../src/usecases/plan/make-plan.ts';
import { showToday } from '../../../src/usecases/today/show-today.ts';
import { throwBatchAway } from '../../../src/usecases/today/throw-batch-away.ts';
import { doneOf, refusalOf } from '../../support/outcomes.ts';
import { plannedYard, saturday } from '../../support/planned-yard.ts';
import { yardContext } from '../../support/yard-context.ts';

/** Planned at 7:30: no. 1 is set up from 8:10 and mixed for from 8:22, full at 8:39. */
const morning = async () => {
  const { database } = await yardContext(plannedYard({ yard: { ...plannedYard().yard, now: saturday('07:30') } }));
  const at = (clock: string) => ({ database, now: saturday(clock) });
  await currentPlan(at('07:30'));
  return at;
};
type At = Awaited<ReturnType<typeof morning>>;

const named = async (at: At, clock: string): Promise<string> => {
  const { begun } = await showToday(at(clock));
  return begun.find(({ step }) => step.kind === 'batch')?.name ?? '';
};

const thrown = (step: string) => ({ step, left: 'to clean' as const });

const seen = async (at: At, clock: string) => {
  const { plan, yard } = await currentPlan(at(clock));
  const mould = yard.moulds.find(({ id }) => id === '900 no. 1');
  const mortar = yard.materials.find(({ id }) => id === 'mortar')?.onHand;
  const { begun } = await showToday(at(clock));
  return {
    ...{ mortar, condition: mould?.condition, batches: plan.batches.map(({ start }) => start.slice(11, 16)) },
    begun: begun.map(({ step }) => step.kind),
  };
};

/* One bag less of three; no. 1 is to be cleaned (6 minutes) and set up (12) before it is poured again. */
test('a batch under way that went off takes its bag, leaves its mould to clean, and is planned anew', async () => {
  const at = await morning();
  const { words } = doneOf(await throwBatchAway(at('08:30'), thrown(await named(at, '08:30'))));
  expect(words).toBe('The mix for 900 no. 1 thrown away');
  const after = await seen(at, '08:30');
  expect(after).toMatchObject({ mortar: 2, condition: 'dirty' });
  expect(after.begun).not.toContain('batch');
  expect(after.batches).toHaveLength(1);
  expect(after.batches[0]! >= '08:48').toBe(true);
});

test('that is one change, and undone it is under way again', async () => {
  const at = await morning();
  const before = await seen(at, '08:30');
  const { change } = doneOf(await throwBatchAway(at('08:30'), thrown(await named(at, '08:30'))));
  doneOf(await undoChange(at('08:31'), change));
  expect(await seen(at, '08:31')).toEqual(before);
  const again = doneOf(await throwBatchAway(at('08:32'), thrown(await named(at, '08:32'))));
  doneOf(await countMaterial(at('08:33'), 'rod', { text: '4' }));
  doneOf(await undoChange(at('08:34'), again.change));
  expect(await seen(at, '08:34')).toEqual(before);
});

test('a batch that is over and not recorded can have gone off too; one that is to come can not', async () => {
  const at = await morning();
  const name = await named(at, '08:30');
  const refusal = 'late: That batch is neither under way nor to be recorded any more. Nothing was changed.';
  expect(refusalOf(await throwBatchAway(at('08:21'), thrown(name)))).toBe(refusal);
  doneOf(await throwBatchAway(at('08:50'), thrown(name)));
  expect(await seen(at, '08:50')).toMatchObject({ mortar: 2, condition: 'dirty' });
  expect(refusalOf(await throwBatchAway(at('08:51'), thrown(name)))).toBe(refusal);
});

/* The bag is gone all the same; no. 1, whose set-up nobody recorded, stays ready, and is mixed for again at once. */
test('where nothing was in the moulds they stay set up, with mesh and sleeves in them', async () => {
  const at = await morning();
  const mesh = async (clock: string) =>
    (await currentPlan(at(clock))).yard.materials.find(({ id }) => id === 'mesh')?.onHand;
  const before = await mesh('08:30');
  const { words, change } = doneOf(
    await throwBatchAway(at('08:30'), { step: await named(at, '08:30'), left: 'set up' }),
  );
  expect(words).toBe('The mix for 900 no. 1 thrown away, nothing was in the moulds');
  const { yard } = await currentPlan(at('08:30'));
  expect(yard.moulds.find(({ id }) => id === '900 no. 1')).toMatchObject({ condition: 'ready', prepped: true });
  expect(await mesh('08:30')).toBe(before);
  const after = await seen(at, '08:30');
  expect(after).toMatchObject({ mortar: 2, condition: 'ready', batches: ['08:30'] });
  expect((await showToday(at('08:30'))).steps.some(({ kind }) => kind === 'prep')).toBe(false);
  doneOf(await undoChange(at('08:31'), change));
  expect(await seen(at, '08:31')).toMatchObject({ mortar: 3, begun: ['batch'] });
});
