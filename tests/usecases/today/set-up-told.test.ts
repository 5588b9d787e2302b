import { describe, expect, test } from 'vitest';
import { undoChange } from '../../../src/usecases/changes/undo-change.ts';
import { currentPlan } from '../../../src/usecases/plan/make-plan.ts';
import { recordCoat } from '../../../src/usecases/today/record-coat.ts';
import { recordPrep } from '../../../src/usecases/today/record-prep.ts';
import { recordStrip } from '../../../src/usecases/today/record-strip.ts';
import { showToday } from '../../../src/usecases/today/show-today.ts';
import { doneOf, refusalOf } from '../../support/outcomes.ts';
import { plannedMorning } from '../../support/planned-morning.ts';
import { plannedYard, saturday } from '../../support/planned-yard.ts';
import { yardContext } from '../../support/yard-context.ts';

/* The plan of that morning is told of in `plannedMorning`. */
const PREP = { mould: '900 no. 1', casting: 'panel-900', sealed: false };

const morning = async () => {
  const { at, plannedAt } = await plannedMorning();
  /** Of the one pour: mixed from, full at, out from, and when the order is packed. */
  const times = async (clock: string) => (await plannedAt(clock)).instants.map((instant) => instant?.slice(11, 16));
  return { at, times };
};

describe('a set-up told of with its time', () => {
  /* Ready eight minutes later than planned: mixed from 8:30, full at 8:47, out from 10:02, packed from 10:10. */
  test('moves the batch that is under way by the clock: it began no sooner', async () => {
    const { at, times } = await morning();
    const { words } = doneOf(await recordPrep(at('08:35'), { ...PREP, at: '08:30' }));
    expect(words).toBe('900 no. 1 is ready to pour at 8:30');
    expect(await times('08:35')).toEqual(['08:30', '08:47', '10:02', '10:10']);
    const { begun } = await showToday(at('08:35'));
    expect(begun.map(({ step }) => [step.kind, step.at])).toEqual([['batch', saturday('08:30')]]);
  });

  test('moves the batch that is over by the clock and not recorded', async () => {
    const { at, times } = await morning();
    doneOf(await recordPrep(at('09:00'), { ...PREP, at: '08:30' }));
    expect((await times('09:00')).slice(0, 2)).toEqual(['08:30', '08:47']);
    expect((await times('09:00'))[2]! >= '10:02').toBe(true);
  });

  test('leaves all as it was where it was ready in time', async () => {
    const { at, times } = await morning();
    const planned = await times('08:25');
    doneOf(await recordPrep(at('08:25'), { ...PREP, at: '08:19' }));
    expect(await times('08:25')).toEqual(planned);
  });

  test('says nothing of its time where it is tapped after its batch was to be begun', async () => {
    const { at, times } = await morning();
    const planned = await times('08:35');
    doneOf(await recordPrep(at('08:35'), PREP));
    expect(await times('08:35')).toEqual(planned);
  });

  test.each(['08:35', '09:00'])('told at %s it is undone: the batch stands where it was, once', async (clock) => {
    const { at, times } = await morning();
    const planned = await times(clock);
    const { change } = doneOf(await recordPrep(at(clock), { ...PREP, at: '08:30' }));
    doneOf(await undoChange(at(clock), change));
    expect(await times(clock)).toEqual(planned);
    expect((await currentPlan(at(clock))).plan.batches).toHaveLength(1);
  });
});

test('a mould that was emptied only later was neither set up nor coated by then', async () => {
  const inMould = [{ mould: '900 no. 2', casting: 'panel-900', filledAt: '2027-04-09T16:00:00+01:00' }];
  const { database } = await yardContext(
    plannedYard({ yard: { ...plannedYard().yard, now: saturday('07:30') }, inMould }),
  );
  const at = (clock: string) => ({ database, now: saturday(clock) });
  doneOf(await recordStrip(at('08:20'), { mould: '900 no. 2', cameOut: 'good', reason: '' }));
  const why = 'at: 900 no. 2 was emptied only at 8:20. Nothing was changed.';
  expect(refusalOf(await recordPrep(at('08:40'), { ...PREP, mould: '900 no. 2', at: '08:15' }))).toBe(why);
  expect(refusalOf(await recordCoat(at('08:40'), { mould: '900 no. 2', at: '08:15' }))).toBe(why);
});
