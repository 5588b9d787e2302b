import { describe, expect, test } from 'vitest';
import { addingLines, fillingText, setUpLines } from '../../../views/today/work-words.ts';

const mortar = { name: 'Fast-setting mortar', unit: 'bag', quantity: 2, measured: null };
const acid = { name: 'Citric acid', unit: 'g', quantity: 114, measured: '115 g' };
const sachets = { name: 'Plasticiser', unit: 'sachet', quantity: 2, measured: null };
const fibre = { name: 'Glass fibre, chopped', unit: 'g', quantity: 18.8, measured: '19 g' };
const slip = { bags: 2, ingredients: [mortar, fibre, acid, sachets], water: '9.4 l', waterNote: null };

describe('what goes into the mixer', () => {
  test('is water, what is measured into it, the bags in parts, and fibre last', () => {
    expect(addingLines(slip)).toEqual([
      '9.4 l of water first',
      '115 g of Citric acid and 2 sachets of Plasticiser, stirred into it',
      '2 bags of Fast-setting mortar, in parts while it turns',
      '19 g of Glass fibre, chopped, last and not for long',
    ]);
  });

  test('begins with water also where nobody said how much, and has no lines for what is not in it', () => {
    const plain = { ...slip, ingredients: [mortar], water: null };
    expect(addingLines(plain)).toEqual(['Water first', '2 bags of Fast-setting mortar, in parts while it turns']);
    expect(addingLines({ ...plain, waterNote: 'until it flows' })[0]).toBe(
      'Water first, as noted for a bag: until it flows',
    );
  });
});

test('mesh is laid in once it thickens, and every piece is marked', () => {
  const [first, last] = [
    'Fill, level, and vibrate until no more air comes up.',
    'Scratch in the day and the mould, and cover it.',
  ];
  const mesh = { name: 'Mesh', unit: 'm2', quantity: 0.32 };
  expect(fillingText({ fittings: [mesh] })).toBe(`${first} Lay in 0.32 m² of Mesh once it thickens. ${last}`);
  expect(fillingText({ fittings: [] })).toBe(`${first} ${last}`);
});

describe('what a mould asks for while it is set up', () => {
  const prep = {
    ...{ kind: 'prep' as const, name: 'a', at: '', until: '', mould: '900 no. 1', casting: 'p', piece: 'Panel 900' },
    ...{ clean: true, sealed: true, changeFrom: 'Panel 600', waits: false },
    fittings: [{ name: 'Mesh', unit: 'm2', quantity: 0.16 }],
    cuts: [{ name: 'Sleeve pipe', length: '190 mm', count: 2, from: [{ offcut: '2232 mm', count: 2, sticks: 1 }] }],
  };

  test('says what to cut, how long, how many and from what', () => {
    expect(setUpLines(prep)).toEqual([
      'Clean it',
      'Change it over from Panel 600',
      'Boards and ends of its own set, by their numbers, pinned and square, for Panel 900',
      'Release oil, thin and wiped off, now that its coat is dry; none on steel',
      'Cut 2 × 190 mm of Sleeve pipe, from an offcut of 2232 mm; put in, closed and straight',
      'Lay ready 0.16 m² of Mesh',
    ]);
  });

  test('leaves out what it does not take', () => {
    expect(setUpLines({ ...prep, clean: false, sealed: false, changeFrom: null, cuts: [], fittings: [] })).toEqual([
      'Boards and ends of its own set, by their numbers, pinned and square, for Panel 900',
      'Release oil, thin and wiped off; none on steel',
    ]);
  });
});
