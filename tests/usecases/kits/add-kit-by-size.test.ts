import { expect, test } from 'vitest';
import { seedDemo } from '../../../db/demo/larch-row.ts';
import { loadYardFile } from '../../../db/stores/yard-store.ts';
import { undoChange } from '../../../src/usecases/changes/undo-change.ts';
import { addKitBySize } from '../../../src/usecases/kits/add-kit-by-size.ts';
import { doneOf, refusalOf } from '../../support/outcomes.ts';
import { DEMO_NOW } from '../../support/screens.ts';
import { temporaryDatabase } from '../../support/temporary-database.ts';
import { yardContext } from '../../support/yard-context.ts';

const demo = async () => {
  const database = await temporaryDatabase();
  await database.write((tx) => seedDemo(tx, DEMO_NOW.slice(0, 10), DEMO_NOW));
  const kits = async () => (await database.read((tx) => loadYardFile(tx, DEMO_NOW))).kits;
  return { context: { database, now: DEMO_NOW }, kits };
};

/** 1835 by 935 mm outside: two panels of 900 along, one across, three courses of six. */
const BED = { shape: 'rectangle', faces: 'outside', length: '1835', width: '935', courses: '3', ground: '100' };

test('a kit is added with its panels and pins, under its own name', async () => {
  const { context, kits } = await demo();
  const before = await kits();
  const { value } = doneOf(await addKitBySize(context, { ...BED, name: 'Long bed', packMinutes: '25' }));
  const after = await kits();
  expect(after).toHaveLength(before.length + 1);
  const added = after.find(({ id }) => id === value.id);
  expect(added).toMatchObject({
    name: 'Long bed',
    packMinutes: 25,
    pieces: [{ count: 18 }],
    cuts: [{ count: 6, lengthMm: 700 }],
  });
});

test('undone, it is gone', async () => {
  const { context, kits } = await demo();
  const before = await kits();
  doneOf(await undoChange(context, doneOf(await addKitBySize(context, BED)).change));
  expect(await kits()).toEqual(before);
});

test.each([
  [{ ...BED, length: '1800' }, /^length: That size can't be made/],
  [{ ...BED, packMinutes: 'soon' }, /^packMinutes: How many minutes/],
  [{ ...BED, length: '' }, /^length: /],
])('%j is refused, and nothing is added', async (typed, why) => {
  const { context, kits } = await demo();
  const before = await kits();
  expect(refusalOf(await addKitBySize(context, typed))).toMatch(why);
  expect(await kits()).toEqual(before);
});

test('a name that is taken is refused', async () => {
  const { context } = await demo();
  doneOf(await addKitBySize(context, { ...BED, name: 'Long bed' }));
  expect(refusalOf(await addKitBySize(context, { ...BED, name: 'Long bed' }))).toMatch(
    /^name: There is a kit of that name/,
  );
});

test('where no panel has a size, it is refused', async () => {
  expect(refusalOf(await addKitBySize(await yardContext(), BED))).toBe('length: No panel has a size yet.');
});
