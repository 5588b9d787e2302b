import { expect, test } from 'vitest';
import { mouldById } from '../../../db/stores/mould-store.ts';
import { loadYardFile } from '../../../db/stores/yard-store.ts';
import { undoChange } from '../../../src/usecases/changes/undo-change.ts';
import { recordCoat } from '../../../src/usecases/today/record-coat.ts';
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
