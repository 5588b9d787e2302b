import { expect, test } from 'vitest';
import { undoChange } from '../../../src/usecases/changes/undo-change.ts';
import { currentPlan } from '../../../src/usecases/plan/make-plan.ts';
import { planSessionAnew } from '../../../src/usecases/today/plan-session-anew.ts';
import { fixedYard, SATURDAY_START } from '../../support/fixed-yard.ts';
import { doneOf, refusalOf } from '../../support/outcomes.ts';

test('what is fixed for a session is let go for once, and is back when that is undone', async () => {
  const yard = await fixedYard();
  const fixed = (await currentPlan(yard.friday)).yard.keep;
  expect(fixed?.batches).toHaveLength(1);
  const { words, value, change } = doneOf(await planSessionAnew(yard.friday, SATURDAY_START));
  expect(words).toBe('Sat 10 Apr replanned');
  expect(value).toEqual({ start: SATURDAY_START, date: '2027-04-10' });
  doneOf(await undoChange(yard.friday, change));
  expect((await currentPlan(yard.friday)).yard.keep).toEqual(fixed);
});

test('the same instant by another clock is the same session', async () => {
  const yard = await fixedYard();
  expect(doneOf(await planSessionAnew(yard.friday, '2027-04-10T07:00:00Z')).value.date).toBe('2027-04-10');
});

test('a session of which nothing is fixed is refused, and what is fixed stays', async () => {
  const yard = await fixedYard();
  expect(refusalOf(await planSessionAnew(yard.friday, '2027-04-17T08:00:00+01:00'))).toBe(
    'session: Nothing is fixed for that session any more. Nothing was changed.',
  );
  expect((await currentPlan(yard.friday)).yard.keep?.batches).toHaveLength(1);
});
