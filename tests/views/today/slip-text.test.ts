import { expect, test } from 'vitest';
import { slipLines, slipText } from '../../../views/today/slip-text.ts';

const mortar = { name: 'Fast-setting mortar', unit: 'bag', quantity: 2, measured: null };
const acid = { name: 'Citric acid', unit: 'g', quantity: 114, measured: '115 g' };
const sachets = { name: 'Plasticiser', unit: 'sachet', quantity: 2, measured: null };
const slip = { bags: 2, ingredients: [acid, mortar, sachets], water: '9.4 l', waterNote: null };

test('what goes into a batch, the bags and the water first', () => {
  expect(slipLines(slip)).toEqual([
    '2 bags of Fast-setting mortar',
    '9.4 l of water',
    '115 g of Citric acid',
    '2 sachets of Plasticiser',
  ]);
  expect(slipText(slip)).toBe('2 bags, 9.4 l water, 115 g Citric acid, 2 sachets Plasticiser');
});

test('without water, or with a note in its place', () => {
  expect(slipText({ ...slip, water: null, ingredients: [mortar] })).toBe('2 bags');
  const noted = { ...slip, water: null, waterNote: 'Until it flows', ingredients: [] };
  expect(slipText(noted)).toBe('2 bags, water: Until it flows');
  expect(slipLines(noted)).toEqual(['Water, as noted for a bag: Until it flows']);
});

test('a second bagged material is named, and names with commas are set apart', () => {
  const sand = { ...mortar, name: 'Sand, washed', quantity: 1 };
  expect(slipText({ ...slip, ingredients: [mortar, sand] })).toBe('2 bags; 1 bag Sand, washed; 9.4 l water');
});
