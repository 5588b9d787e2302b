import { expect, test } from 'vitest';
import { stockGeometry } from '../../../views/charts/stock-geometry.ts';

const sizes = { width: 100, height: 60, left: 0, top: 0, bottom: 0 };

test('a stepped line stays as it is until the next level', () => {
  const drawn = stockGeometry(3, [{ day: 5, left: 1 }], { first: 0, last: 10 }, sizes);
  expect(drawn).toMatchObject({ line: 'M0 0H50V40H100', points: [{ x: 50, y: 40 }], most: 3, noneY: 60, mostY: 0 });
});

test('levels of one day stand over each other, and none is outside the drawing', () => {
  const levels = [
    { day: 2, left: 0 },
    { day: 2, left: 6 },
    { day: 99, left: -1 },
  ];
  const { points, line } = stockGeometry(2, levels, { first: 0, last: 10 }, { ...sizes, left: 20, top: 5, bottom: 7 });
  expect(points).toEqual([
    { x: 36, y: 65 },
    { x: 36, y: 5 },
    { x: 100, y: 65 },
  ]);
  expect(line.startsWith('M20 45')).toBe(true);
});

test('nothing at all is a flat line on the ground', () => {
  expect(stockGeometry(0, [], { first: 4, last: 4 }, sizes).line).toBe('M0 60H100');
});

test('steps down of one day are one stroke, and none of up and down is lost', () => {
  const lineOf = (...levels: { day: number; left: number }[]) =>
    stockGeometry(6, levels, { first: 0, last: 10 }, sizes).line;
  const down = [5, 4, 3].map((left) => ({ day: 5, left }));
  expect(lineOf(...down)).toBe('M0 0H50V30H100');
  expect(lineOf(...down, { day: 5, left: 6 }, { day: 5, left: 2 })).toBe('M0 0H50V30V0V40H100');
  expect(lineOf({ day: 0, left: 3 }, { day: 0, left: 1 }, { day: 4, left: 1 })).toBe('M0 0V50H100');
  expect(lineOf({ day: 0, left: 3 }, { day: 0, left: 6 })).toBe('M0 0V30V0H100');
});
