import { expect, test } from 'vitest';
import { undoChange } from '../../../src/usecases/changes/undo-change.ts';
import { currentPlan } from '../../../src/usecases/plan/make-plan.ts';
import { lookAgain } from '../../../src/usecases/today/look-again.ts';
import { recordPour } from '../../../src/usecases/today/record-pour.ts';
import { recordStrip } from '../../../src/usecases/today/record-strip.ts';
import { showToday } from '../../../src/usecases/today/show-today.ts';
import { stopAt } from '../../../src/usecases/today/stop-at.ts';
import { doneOf, refusalOf } from '../../support/outcomes.ts';
import { plannedMorning } from '../../support/planned-morning.ts';

const MOULD = '900 no. 1';

/* The plan of that morning is told of in `plannedMorning`: recorded full at 8:39, out from 9:54 to 10:02, packed to 10:07. */
const poured = async () => {
  const { at } = await plannedMorning();
  const pours = [{ mould: MOULD, casting: 'panel-900', order: '27-001', sealed: false, filledAt: at('08:39').now }];
  doneOf(await recordPour(at('08:40'), { pours, bags: 1, filledAt: at('08:39').now }));
  const times = async (clock: string) => {
    const { plan } = await currentPlan(at(clock));
    return [plan.strips[0]?.stripStart, plan.orders[0]?.packStart].map((instant) => instant?.slice(8, 16));
  };
  return { at, times };
};

test('by hand', async () => {
  expect(await (await poured()).times('09:50')).toEqual(['10T09:54', '10T10:02']);
});

test('a piece that is not hard yet is looked at again in 15 minutes, and what waits for it waits too', async () => {
  const { at, times } = await poured();
  const { words } = doneOf(await lookAgain(at('09:56'), MOULD));
  expect(words).toBe('900 no. 1 not hard yet, to be looked at again at 10:11');
  expect(await times('09:57')).toEqual(['10T10:11', '10T10:19']);
  const strip = (await showToday(at('09:57'))).steps.find(({ kind }) => kind === 'strip');
  expect(strip?.at).toBe(at('10:11').now);
  // It stays there when the plan is made anew, and can be put off once more.
  doneOf(await lookAgain(at('10:12'), MOULD));
  expect(await times('10:13')).toEqual(['10T10:27', '10T10:35']);
  doneOf(await recordStrip(at('10:30'), { mould: MOULD, cameOut: 'good', reason: '' }));
  expect((await times('10:31'))[0]).toBeUndefined();
});

test('also once its time is over, and undone it counts as done again', async () => {
  const { at, times } = await poured();
  const { change } = doneOf(await lookAgain(at('10:05'), MOULD));
  expect(await times('10:06')).toEqual(['10T10:20', '10T10:28']);
  doneOf(await undoChange(at('10:07'), change));
  expect((await showToday(at('10:07'))).overdue.some((name) => name.startsWith('late-strip'))).toBe(true);
});

test('a tap too many, a mould without a piece, and an hour without hands are refused', async () => {
  const { at } = await poured();
  doneOf(await lookAgain(at('09:56'), MOULD));
  expect(refusalOf(await lookAgain(at('09:56'), MOULD))).toBe(
    'mould: 900 no. 1 is stripped only after 10:11 as it is. Nothing was changed.',
  );
  expect(refusalOf(await lookAgain(at('09:56'), '900 no. 2'))).toBe(
    'mould: 900 no. 2 has no piece in it that is to be stripped. Nothing was changed.',
  );
  expect(refusalOf(await lookAgain(at('11:35'), MOULD))).toBe(
    'mould: At 11:50 nobody is there to strip 900 no. 1, by the hours under way. Nothing was changed.',
  );
});

/* By the hours until 11:45 nothing more fits behind it: the order is packed next Saturday, and the strip stays where it was put. */
test('where what waits for it no longer fits, the plan is made anew round it', async () => {
  const { at, times } = await poured();
  doneOf(await stopAt(at('09:40'), { session: at('08:00').now, at: '10:30' }));
  expect(await times('09:50')).toEqual(['10T09:54', '10T10:02']);
  const { moved } = doneOf(await lookAgain(at('09:52'), MOULD));
  expect(await times('09:53')).toEqual(['10T10:07', '17T11:40']);
  expect(moved).toMatchObject([{ order: '27-001', from: '2027-04-10', to: '2027-04-17' }]);
});
