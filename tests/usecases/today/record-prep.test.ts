import { expect, test } from 'vitest';
import { mouldById } from '../../../db/stores/mould-store.ts';
import { recentWorkRecords } from '../../../db/stores/work-record-store.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { undoChange } from '../../../src/usecases/changes/undo-change.ts';
import { recordPrep } from '../../../src/usecases/today/record-prep.ts';
import { doneOf, refusalOf } from '../../support/outcomes.ts';
import { plannedMorning } from '../../support/planned-morning.ts';
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

/* By the plan it is set up from 8:10 to 8:22, and its batch is mixed from then on. */
test.each([
  ['08:21', '08:21'],
  ['08:27', '08:22'],
  ['08:45', '08:22'],
])('tapped at %s it was ready at %s: its batch was to be begun', async (clock, ready) => {
  const { at } = await plannedMorning();
  doneOf(await recordPrep(at(clock), prep({ mould: '900 no. 1', sealed: false })));
  const records = await at(clock).database.read(recentWorkRecords);
  expect(records.find(({ kind }) => kind === 'set up')?.at).toBe(saturday(ready));
});

/** The minute of the tap that the book keeps of a set-up; null where it says nothing of how long that takes. */
const timedTap = async (record: Parameters<typeof recordPrep>[1], yard: YardFile = plannedYard()) => {
  const { database } = await yardContext(yard);
  doneOf(await recordPrep({ database, now: saturday('08:45') }, { ...record, tapped: true }));
  const records = await database.read(recentWorkRecords);
  const kept = records.find(({ kind }) => kind === 'set up');
  return (kept && 'tappedAt' in kept && kept.tappedAt) || null;
};

test('a set-up is timed only where it is what it is every turn: cleaned, not coated, and for the same piece', async () => {
  const [panel] = plannedYard().castings;
  const moulds = plannedYard().moulds.map((mould) => ({ ...mould, makes: [...mould.makes, { casting: 'panel-600' }] }));
  const two = plannedYard({ castings: [panel!, { ...panel!, id: 'panel-600', name: 'Panel 600' }], moulds });
  expect(await timedTap(prep({ sealed: false }))).toBe(saturday('08:45'));
  expect(await timedTap(prep({ sealed: true }))).toBeNull();
  expect(await timedTap(prep({ mould: '900 no. 1', sealed: false }))).toBeNull();
  expect(await timedTap(prep({ sealed: false }), two)).toBe(saturday('08:45'));
  expect(await timedTap(prep({ casting: 'panel-600', sealed: false }), two)).toBeNull();
});
