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
  const { words } = doneOf(await throwBatchAway(at('08:30'), await named(at, '08:30')));
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
  const { change } = doneOf(await throwBatchAway(at('08:30'), await named(at, '08:30')));
  doneOf(await undoChange(at('08:31'), change));
  expect(await seen(at, '08:31')).toEqual(before);
  const again = doneOf(await throwBatchAway(at('08:32'), await named(at, '08:32')));
  doneOf(await countMaterial(at('08:33'), 'rod', { text: '4' }));
  doneOf(await undoChange(at('08:34'), again.change));
  expect(await seen(at, '08:34')).toEqual(before);
});

test('a batch that is over and not recorded can have gone off too; one that is to come can not', async () => {
  const at = await morning();
  const name = await named(at, '08:30');
  const refusal = 'late: That batch is neither under way nor to be recorded any more. Nothing was changed.';
  expect(refusalOf(await throwBatchAway(at('08:21'), name))).toBe(refusal);
  doneOf(await throwBatchAway(at('08:50'), name));
  expect(await seen(at, '08:50')).toMatchObject({ mortar: 2, condition: 'dirty' });
  expect(refusalOf(await throwBatchAway(at('08:51'), name))).toBe(refusal);
});
