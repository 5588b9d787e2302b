import { expect, test } from 'vitest';
import { sizesText, sizesTyped } from '../../../src/usecases/typed/sizes-typed.ts';

const read = (text: string, system: 'metric' | 'US' = 'metric') => sizesTyped(text, system);
const value = (text: string, system: 'metric' | 'US' = 'metric') => {
  const found = read(text, system);
  return found.ok ? found.value.map((x) => [x.count, x.widthMm, x.lengthMm]) : found.reason;
};

test('sizes are read one after another, with how many of each', () => {
  expect(value('1000 by 900')).toEqual([[1, 1000, 900]]);
  expect(value('1 m × 90 cm, 2 of 300 x 400 mm; 3 × 50 × 60')).toEqual([
    [1, 1000, 900],
    [2, 300, 400],
    [3, 50, 60],
  ]);
  expect(value('3 ft by 2 ft', 'US')).toEqual([[1, 914.4, 609.6]]);
  expect(value('  ')).toEqual([]);
});

test('what cannot be read is said', () => {
  expect(value('900')).toMatch(/Width by length/);
  expect(value('0 by 900')).toMatch(/above 0/);
  expect(value('0 of 300 by 400')).toMatch(/How many/);
});

test('what is written is read again', () => {
  const sizes = [
    { widthMm: 1000, lengthMm: 900, count: 1 },
    { widthMm: 190.5, lengthMm: 400, count: 2 },
  ];
  expect(sizesText(sizes, 'metric')).toBe('1000 mm by 900 mm, 2 of 190.5 mm by 400 mm');
  expect(read(sizesText(sizes, 'metric'))).toEqual({ ok: true, value: sizes });
});
