import { expect, test } from 'vitest';
import { materialById } from '../../../db/stores/material-store.ts';
import type { YardFileInput } from '../../../shared/yard-file.ts';
import { packOrder } from '../../../src/usecases/orders/pack-order.ts';
import { currentPlan } from '../../../src/usecases/plan/make-plan.ts';
import { recordPour } from '../../../src/usecases/today/record-pour.ts';
import { recordPrep } from '../../../src/usecases/today/record-prep.ts';
import { recordStrip } from '../../../src/usecases/today/record-strip.ts';
import { writeLateWork } from '../../../src/usecases/today/write-late-work.ts';
import { demoSaturday } from '../../support/demo-saturday.ts';
import { doneOf, refusalOf } from '../../support/outcomes.ts';
import { plannedYard, saturday } from '../../support/planned-yard.ts';
import { yardContext } from '../../support/yard-context.ts';

const on = async (clock: string, changes: Partial<YardFileInput> = {}) => {
  const yard = plannedYard({ yard: { ...plannedYard().yard, now: saturday(clock) }, ...changes });
  const { database } = await yardContext(yard);
  const at = (later: string) => ({ database, now: saturday(later) });
  const bags = () => database.read(async (tx) => (await materialById(tx, 'mortar'))?.onHand);
  return { at, bags };
};
const of = (mould: string) => ({ mould, casting: 'panel-900', order: null, sealed: false });
const both = { pours: [of('900 no. 1'), of('900 no. 2')], bags: 1, filledAt: null, step: 'other-7' };
const NOT_AGAIN = 'Nothing was changed. To record it otherwise, undo that first.';

test.each([
  ['fewer bags', { bags: 0.5 }],
  ['another time', { filledAt: '09:20' }],
  ['one mould only', { pours: [of('900 no. 1')] }],
  ['another order', { pours: [{ ...of('900 no. 1'), order: '27-001' }, of('900 no. 2')] }],
])('a batch that is recorded is not recorded again with %s: what is recorded is said', async (_what, other) => {
  const { at, bags } = await on('09:30');
  doneOf(await recordPour(at('09:30'), both));
  const left = await bags();
  expect(refusalOf(await recordPour(at('09:40'), { ...both, ...other }))).toBe(
    `pours: Already recorded at 9:30: 2 pieces from 1 bag: Panel 900 in 900 no. 1, Panel 900 in 900 no. 2. ${NOT_AGAIN}`,
  );
  expect(await bags()).toBe(left);
});

test('the same batch told again is the success of the first tap, by its own time too', async () => {
  const { at } = await on('09:30');
  const first = doneOf(await recordPour(at('09:30'), { ...both, filledAt: '09:25' }));
  for (const filledAt of ['09:25', saturday('09:25'), null])
    expect(doneOf(await recordPour(at('09:45'), { ...both, filledAt })).change).toBe(first.change);
  // The bags that the pieces need are the one that was said.
  expect(doneOf(await recordPour(at('09:45'), { ...both, bags: null })).change).toBe(first.change);
});

test('what is left of a batch is still recorded by itself', async () => {
  const { at } = await on('09:30');
  const one = doneOf(await recordPour(at('09:30'), { ...both, pours: [of('900 no. 1')] }));
  const other = doneOf(await recordPour(at('09:40'), { ...both, pours: [of('900 no. 2')] }));
  expect(other.change).toBeGreaterThan(one.change);
});

test('a piece that came out good is not scrapped by a second tap, nor stripped at another time', async () => {
  const { at } = await on('10:30', {
    inMould: [{ mould: '900 no. 1', casting: 'panel-900', filledAt: saturday('09:00') }],
  });
  const good = { mould: '900 no. 1', cameOut: 'good' as const, reason: '', step: 'piece 1' };
  doneOf(await recordStrip(at('10:30'), good));
  const recorded = `mould: Already recorded at 10:30: 900 no. 1 stripped. ${NOT_AGAIN}`;
  expect(refusalOf(await recordStrip(at('10:40'), { ...good, cameOut: 'scrap' }))).toBe(recorded);
  expect(refusalOf(await recordStrip(at('10:40'), { ...good, at: '10:20' }))).toBe(recorded);
});

test('a set-up and a packing told with another time say when they are recorded', async () => {
  const { at } = await on('10:57', { finished: [{ casting: 'panel-900', count: 2 }] });
  const prep = { mould: '900 no. 1', casting: 'panel-900', sealed: false, step: 'prep 1' };
  doneOf(await recordPrep(at('10:57'), prep));
  expect(refusalOf(await recordPrep(at('10:58'), { ...prep, at: '10:50' }))).toMatch(
    /^mould: Already recorded at 10:57: 900 no\. 1 set up for Panel 900\./,
  );
  doneOf(await packOrder(at('10:58'), '27-001', { evenShort: false }));
  expect(refusalOf(await packOrder(at('10:59'), '27-001', { evenShort: false, at: '10:50' }))).toMatch(
    /^order: Already recorded at 10:58: order 27-001 packed\./,
  );
});

/* A page that was open since before all of it was recorded as planned. */
test('late work recorded as planned is not recorded again with other bags', async () => {
  const { context, late } = await demoSaturday();
  const batch = (await late('13:45')).find((step) => step.kind === 'batch');
  if (batch?.kind !== 'batch') throw new Error('no batch');
  const record = { pours: batch.pours, bags: batch.bags, filledAt: batch.pours.at(-1)!.until, step: batch.name };
  const all = doneOf(await writeLateWork(context('13:45')));
  expect(doneOf(await recordPour(context('13:46'), record)).change).toBe(all.change);
  expect(refusalOf(await recordPour(context('13:46'), { ...record, bags: batch.bags + 0.5 }))).toMatch(
    /^pours: Already recorded at /,
  );
});

/*
 * The demo's Saturday is full to its last minute: the first batch ends at 9:03 by its plan, and a quarter of an hour later not
 * all of it fits. What is left out of it moves no day.
 */
test('a batch that was full later than planned leaves every day, though not all that is fixed can be moved later', async () => {
  const { context, days } = await demoSaturday();
  const before = await days('08:30');
  const { plan } = await currentPlan(context('08:30'));
  const own = plan.pours.filter(({ batch }) => batch === plan.batches[0]!.id);
  const pours = own.map(({ mould, order = null }) => ({ ...of(mould), order }));
  doneOf(await recordPour(context('09:18'), { pours, bags: 1, filledAt: null }));
  expect(await days('09:18')).toEqual(before);
});
