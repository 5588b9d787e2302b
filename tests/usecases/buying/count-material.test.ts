import { expect, test } from 'vitest';
import { addMaterial, materialById } from '../../../db/stores/material-store.ts';
import { loadYardFile } from '../../../db/stores/yard-store.ts';
import { countMaterial } from '../../../src/usecases/buying/count-material.ts';
import { doneOf, refusalOf } from '../../support/outcomes.ts';
import { yardContext } from '../../support/yard-context.ts';

test('the stock book says what was counted, and the record says both', async () => {
  const context = await yardContext();
  const { words, yard } = doneOf(await countMaterial(context, 'mortar', { text: '17.5' }));
  expect(words).toBe('Fast-setting mortar counted: 17.5 in the yard, not 20');
  expect(yard.materials[0]?.onHand).toBe(17.5);
});

test.each([
  ['gravel', '3', 'material: That material is not in the stock book.'],
  ['mortar', '', 'counted: How much is there? Write a number.'],
  ['mortar', 'many', /^counted: /],
  ['mortar', '20', 'counted: The stock book says so already. Nothing was changed.'],
])('%s counted as "%s" is refused', async (material, text, why) => {
  const context = await yardContext();
  expect(refusalOf(await countMaterial(context, material, { text }))).toMatch(why);
  expect((await context.database.read((tx) => materialById(tx, 'mortar')))?.onHand).toBe(20);
});

const rodIn = async ({ database, now }: Awaited<ReturnType<typeof yardContext>>) => {
  const { materials } = await database.read((tx) => loadYardFile(tx, now));
  const { onHand, offcuts } = materials.find(({ id }) => id === 'rod')!;
  return { onHand, offcuts };
};

test('of sticks the whole ones are counted, and what is left of opened ones by its lengths', async () => {
  const context = await yardContext();
  const { words } = doneOf(await countMaterial(context, 'rod', { text: '2' }, '2232 mm, 2 × 900 mm'));
  expect(words).toBe('Rod 12 mm counted: 2 whole, offcuts 2232 mm, 2 × 900 mm in the yard, not 3 whole');
  const offcuts = [
    { lengthMm: 2232, count: 1 },
    { lengthMm: 900, count: 2 },
  ];
  expect(await rodIn(context)).toEqual({ onHand: 2, offcuts });
  // Only an offcut is gone; the whole ones were not counted again.
  doneOf(await countMaterial(context, 'rod', { text: '' }, '900 mm, 900 mm'));
  expect(await rodIn(context)).toEqual({ onHand: 2, offcuts: offcuts.slice(1) });
  doneOf(await countMaterial(context, 'rod', { text: '' }, ''));
  expect(await rodIn(context)).toEqual({ onHand: 2 });
});

test.each([
  ['2.5', '', /^counted: Write whole ones\./],
  ['2', '3000', /^offcuts: A whole one is 3000 mm\./],
  ['3', '', /^counted: The stock book says so already\./],
  ['', '', /^counted: The stock book says so already\./],
])('%s whole ones and offcuts "%s" are refused', async (whole, offcuts, why) => {
  const context = await yardContext();
  expect(refusalOf(await countMaterial(context, 'rod', { text: whole }, offcuts))).toMatch(why);
  expect(await rodIn(context)).toEqual({ onHand: 3 });
});

test('of sheets the whole ones are counted, and the rests by their sizes', async () => {
  const context = await yardContext();
  const sheet = { sheetWidthMm: 1000, sheetLengthMm: 2000, meshMm: 50, inSheets: true };
  await context.database.write((tx) =>
    addMaterial(
      tx,
      {
        ...{ id: 'mesh', name: 'Mesh', unit: 'sheet', onHand: 3, pack: 1, minimum: 0, kerfMm: 0, ...sheet },
        rests: [{ widthMm: 400, lengthMm: 600, count: 1 }],
      },
      context.now,
    ),
  );
  const mesh = async () => (await context.database.read((tx) => materialById(tx, 'mesh')))!;
  const { words } = doneOf(await countMaterial(context, 'mesh', { text: '2' }, '1200 by 400, 2 of 400 by 600'));
  expect(words).toBe(
    'Mesh counted: 2 whole, rests 1200 mm by 400 mm, 2 of 400 mm by 600 mm in the yard, not 3 whole, rests 400 mm by 600 mm',
  );
  const rests = [
    { widthMm: 1200, lengthMm: 400, count: 1 },
    { widthMm: 400, lengthMm: 600, count: 2 },
  ];
  expect(await mesh()).toMatchObject({ onHand: 2, rests });
  doneOf(await countMaterial(context, 'mesh', { text: '' }, ''));
  expect(await mesh()).toMatchObject({ onHand: 2, rests: null });
  expect(refusalOf(await countMaterial(context, 'mesh', { text: '2.5' }, ''))).toMatch(/^counted: Write whole ones\./);
  expect(refusalOf(await countMaterial(context, 'mesh', { text: '2' }, '600'))).toMatch(/^offcuts: Width by length/);
});
