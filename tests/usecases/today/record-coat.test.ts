import { expect, test } from 'vitest';
import { mouldById } from '../../../db/stores/mould-store.ts';
import { loadYardFile } from '../../../db/stores/yard-store.ts';
import { undoChange } from '../../../src/usecases/changes/undo-change.ts';
import { currentPlan } from '../../../src/usecases/plan/make-plan.ts';
import { recordCoat } from '../../../src/usecases/today/record-coat.ts';
import { recordStrip } from '../../../src/usecases/today/record-strip.ts';
import { doneOf, refusalOf } from '../../support/outcomes.ts';
import { plannedYard, saturday } from '../../support/planned-yard.ts';
import { yardContext } from '../../support/yard-context.ts';

const begun = async (clock = '08:33') => {
  const { database } = await yardContext(plannedYard());
  const mould = (id: string) => database.read((tx) => mouldById(tx, id));
  return { context: { database, now: saturday(clock) }, mould };
};
const [first, second] = ['900 no. 1', '900 no. 2'];

/* On at 8:33, the coat dries for 20 minutes. */
test('a mould is clean, has made no turn since, and dries: in the store and in the yard that is planned', async () => {
  const { context, mould } = await begun();
  const outcome = doneOf(await recordCoat(context, { mould: second! }));
  expect(outcome.words).toBe('900 no. 2 is coated, and dries');
  const coated = { condition: 'ready', prepped: false, turnsSinceOil: 0 };
  expect(await mould(second!)).toMatchObject(coated);
  const yard = await context.database.read((tx) => loadYardFile(tx, context.now));
  expect(Date.parse(yard.moulds[1]!.dryFrom!)).toBe(Date.parse(saturday('08:53')));
});

/* Work follows as planned though the tap comes minutes after: a batch that waits for the coat would not be dry in time. */
test.each([
  [-3, -3],
  [5, 0],
  [6, 6],
])('tapped %i minutes after its end it dries from %i minutes after it', async (late, from) => {
  const orders = plannedYard().orders.map((one) => ({ ...one, lines: [{ casting: 'panel-900', quantity: 4 }] }));
  const { database } = await yardContext(plannedYard({ orders }));
  const context = { database, now: saturday('08:00') };
  const { plan } = await currentPlan(context);
  const { end } = plan.coats.find((coat) => coat.mould === second)!;
  const now = new Date(Date.parse(end) + late * 60_000).toISOString();
  doneOf(await recordCoat({ ...context, now }, { mould: second! }));
  const dries = 20;
  const mould = await database.read((tx) => mouldById(tx, second!));
  expect(Date.parse(mould!.dryFrom!)).toBe(Date.parse(end) + (from + dries) * 60_000);
});

test('nobody coated a mould before it was emptied', async () => {
  const full = { mould: second!, casting: 'panel-900', filledAt: '2027-04-08T08:00:00+01:00' };
  const { database } = await yardContext(plannedYard({ inMould: [full] }));
  const context = { database, now: saturday('08:40') };
  doneOf(await recordStrip(context, { mould: second!, cameOut: 'good', reason: '', at: saturday('08:20') }));
  const coat = (at: string) => recordCoat(context, { mould: second!, at });
  expect(refusalOf(await coat(saturday('08:19')))).toBe('at: 900 no. 2 was emptied only at 8:20. Nothing was changed.');
  expect((await coat(saturday('08:30'))).ok).toBe(true);
});

test('undone, it is as it was', async () => {
  const { context, mould } = await begun();
  const before = await mould(second!);
  doneOf(await undoChange(context, doneOf(await recordCoat(context, { mould: second! })).change));
  expect(await mould(second!)).toEqual(before);
});

test.each([
  [{ mould: '900 no. 3' }, /There is no mould/],
  [{ mould: first! }, /takes no sealing coat/],
  [{ mould: second!, at: saturday('09:30') }, /^at: /],
])('%j is refused, and the mould is as it was', async (record, why) => {
  const { context, mould } = await begun();
  expect(refusalOf(await recordCoat(context, record))).toMatch(why);
  expect(await mould(second!)).toMatchObject({ condition: 'dirty', turnsSinceOil: 8, dryFrom: null });
});
