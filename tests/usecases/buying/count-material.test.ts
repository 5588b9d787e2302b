import { expect, test } from 'vitest';
import { addMaterial, materialById } from '../../../db/stores/material-store.ts';
import { loadYardFile } from '../../../db/stores/yard-store.ts';
import { countMaterial } from '../../../src/usecases/buying/count-material.ts';
import { undoChange } from '../../../src/usecases/changes/undo-change.ts';
import { doneOf, refusalOf } from '../../support/outcomes.ts';
import { smallYard } from '../../support/small-yard.ts';
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
  const { words } = doneOf(await countMaterial(context, 'rod', { text: '2' }, { offcuts: '2232 mm, 2 × 900 mm' }));
  expect(words).toBe('Rod 12 mm counted: 2 whole, offcuts 2232 mm, 2 × 900 mm in the yard, not 3 whole');
  const offcuts = [
    { lengthMm: 2232, count: 1 },
    { lengthMm: 900, count: 2 },
  ];
  expect(await rodIn(context)).toEqual({ onHand: 2, offcuts });
  // Only an offcut is gone; the whole ones were not counted again.
  doneOf(await countMaterial(context, 'rod', { text: '' }, { offcuts: '900 mm, 900 mm' }));
  expect(await rodIn(context)).toEqual({ onHand: 2, offcuts: offcuts.slice(1) });
  doneOf(await countMaterial(context, 'rod', { text: '' }, { offcuts: '' }));
  expect(await rodIn(context)).toEqual({ onHand: 2 });
});

test.each([
  ['2.5', '', /^counted: Write whole ones\./],
  ['2', '3000', /^offcuts: A whole one is 3000 mm\./],
  ['3', '', /^counted: The stock book says so already\./],
  ['', '', /^counted: The stock book says so already\./],
])('%s whole ones and offcuts "%s" are refused', async (whole, offcuts, why) => {
  const context = await yardContext();
  expect(refusalOf(await countMaterial(context, 'rod', { text: whole }, { offcuts }))).toMatch(why);
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
  const { words } = doneOf(
    await countMaterial(context, 'mesh', { text: '2' }, { offcuts: '1200 by 400, 2 of 400 by 600' }),
  );
  expect(words).toBe(
    'Mesh counted: 2 whole, rests 1200 mm by 400 mm, 2 of 400 mm by 600 mm in the yard, not 3 whole, rests 400 mm by 600 mm',
  );
  const rests = [
    { widthMm: 1200, lengthMm: 400, count: 1 },
    { widthMm: 400, lengthMm: 600, count: 2 },
  ];
  expect(await mesh()).toMatchObject({ onHand: 2, rests });
  doneOf(await countMaterial(context, 'mesh', { text: '' }, { offcuts: '' }));
  expect(await mesh()).toMatchObject({ onHand: 2, rests: null });
  expect(refusalOf(await countMaterial(context, 'mesh', { text: '2.5' }, { offcuts: '' }))).toMatch(
    /^counted: Write whole ones\./,
  );
  expect(refusalOf(await countMaterial(context, 'mesh', { text: '2' }, { offcuts: '600' }))).toMatch(
    /^offcuts: Width by length/,
  );
});

const LOTS = [
  { quantity: 2, useBy: '2027-05-12' },
  { quantity: 0.5, useBy: '2027-06-01', openedAt: '2027-04-05T08:00:00Z' },
];

/** Five bags: two of 12 May, half an opened one of 1 June, and 2.5 of no known date. */
const datedYard = () => {
  const yard = smallYard();
  return yardContext({
    ...yard,
    materials: yard.materials.map((one) =>
      one.id === 'mortar' ? { ...one, onHand: 5, openedDays: 14, lots: LOTS } : one,
    ),
  });
};

const bags = (row: number, useBy: string, openedAt: string, text: string) => ({
  field: `Bags${row}`,
  ...{ useBy, openedAt, counted: { text } },
});

const mortarIn = async ({ database, now }: Awaited<ReturnType<typeof yardContext>>) => {
  const { materials } = await database.read((tx) => loadYardFile(tx, now));
  const { onHand, lots = [] } = materials.find(({ id }) => id === 'mortar')!;
  return { onHand, lots: lots.map(({ quantity, useBy }) => [quantity, useBy]) };
};

test('bags are counted one date after another, and the difference of each is booked; undoing brings each back', async () => {
  const context = await datedYard();
  const before = await mortarIn(context);
  const counted = [
    bags(0, '2027-06-01', '2027-04-05T09:00:00+01:00', '0.25'),
    bags(1, '2027-05-12', '', '3'),
    bags(2, '', '', '2.5'),
  ];
  const done = doneOf(await countMaterial(context, 'mortar', { text: '' }, { bags: counted }));
  expect(done.words).toBe(
    'Fast-setting mortar counted: 0.25 opened Mon 5 Apr and 3 of Wed 12 May in the yard, not 0.5 opened Mon 5 Apr and 2 of Wed 12 May',
  );
  expect(await mortarIn(context)).toEqual({
    onHand: 5.75,
    lots: [
      [0.25, '2027-06-01'],
      [3, '2027-05-12'],
    ],
  });
  doneOf(await undoChange(context, done.change));
  expect(await mortarIn(context)).toEqual(before);
});

test('bags of one date may be other bags than the book has, and all of it be the same', async () => {
  const context = await datedYard();
  const counted = [bags(0, '2027-05-12', '', '3'), bags(1, '', '', '1.5')];
  doneOf(await countMaterial(context, 'mortar', { text: '5' }, { bags: counted }));
  expect(await mortarIn(context)).toEqual({
    onHand: 5,
    lots: [
      [0.5, '2027-06-01'],
      [3, '2027-05-12'],
    ],
  });
});

test('what bags come to has to be what is written for all, and bags that are gone are said', async () => {
  const context = await datedYard();
  const before = await mortarIn(context);
  const of = (text: string, ...counted: ReturnType<typeof bags>[]) =>
    countMaterial(context, 'mortar', { text }, { bags: counted });
  expect(refusalOf(await of('6', bags(0, '2027-05-12', '', '2.5')))).toBe(
    'counted: By their dates they come to 5.5. Write the same here, or leave it empty.',
  );
  expect(refusalOf(await of('', bags(3, '2027-05-13', '', '1')))).toMatch(
    /^countedBags3: Those bags are not in the stock/,
  );
  expect(refusalOf(await of('', bags(0, '2027-05-12', '', 'some')))).toMatch(/^countedBags0: /);
  expect(await mortarIn(context)).toEqual(before);
});
