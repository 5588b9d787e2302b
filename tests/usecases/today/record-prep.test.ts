import { expect, test } from 'vitest';
import { mouldById } from '../../../db/stores/mould-store.ts';
import { undoChange } from '../../../src/usecases/changes/undo-change.ts';
import { recordPrep } from '../../../src/usecases/today/record-prep.ts';
import { doneOf, refusalOf } from '../../support/outcomes.ts';
import { plannedYard, saturday } from '../../support/planned-yard.ts';
import { yardContext } from '../../support/yard-context.ts';

const begun = async (clock = '08:45') => {
  const { database } = await yardContext(plannedYard());
  const mould = (id: string) => database.read((tx) => mouldById(tx, id));
  return { context: { database, now: saturday(clock) }, mould };
};
const prep = (changes = {}) => ({ mould: '900 no. 2', casting: 'panel-900', sealed: true, ...changes });

test('a dirty mould is ready to pour, its turns counted from the coat it got', async () => {
  const { context, mould } = await begun();
  expect(doneOf(await recordPrep(context, prep())).words).toBe('900 no. 2 is ready to pour');
  expect(await mould('900 no. 2')).toMatchObject({ condition: 'ready', prepped: true, turnsSinceOil: 0 });
});

test('without a coat its turns go on', async () => {
  const { context, mould } = await begun();
  doneOf(await recordPrep(context, prep({ sealed: false })));
  expect(await mould('900 no. 2')).toMatchObject({ prepped: true, turnsSinceOil: 8 });
});

test('undone, it is dirty again', async () => {
  const { context, mould } = await begun();
  const before = await mould('900 no. 2');
  doneOf(await undoChange(context, doneOf(await recordPrep(context, prep())).change));
  expect(await mould('900 no. 2')).toEqual(before);
});

test.each([
  [prep({ mould: '900 no. 3' }), /There is no mould/],
  [prep({ casting: 'panel-600' }), /./],
  [prep({ at: saturday('09:30') }), /^at: /],
])('%j is refused, and the mould is as it was', async (record, why) => {
  const { context, mould } = await begun();
  expect(refusalOf(await recordPrep(context, record))).toMatch(why);
  expect(await mould('900 no. 2')).toMatchObject({ condition: 'dirty', prepped: false, turnsSinceOil: 8 });
});
