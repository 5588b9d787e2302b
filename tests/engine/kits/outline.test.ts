import { expect, test } from 'vitest';
import { outsideSize, SIDES, sideLength, sizeBetween } from '../../../src/engine/kits/outline.ts';

const size = { lengthMm: 1120, widthMm: 520, cutLengthMm: 300, cutWidthMm: 200 };

test('inside sizes get a panel on either side; the corner left out of an L stays, and so does a row', () => {
  expect(outsideSize(size, 'inside', 'rectangle', 40)).toEqual({ ...size, lengthMm: 1200, widthMm: 600 });
  expect(outsideSize(size, 'inside', 'L', 40)).toEqual({ ...size, lengthMm: 1200, widthMm: 600 });
  expect(outsideSize(size, 'inside', 'row', 40)).toEqual(size);
  expect(outsideSize(size, 'outside', 'rectangle', 40)).toEqual(size);
});

test('and back again', () => {
  for (const shape of ['rectangle', 'L', 'row'] as const)
    expect(sizeBetween(outsideSize(size, 'inside', shape, 38.1), 'inside', shape, 38.1)).toEqual(size);
});

test.each(['rectangle', 'L'] as const)('the sides of a %s lead back to where they started', (shape) => {
  const ends = { x: 0, y: 0 };
  for (const side of SIDES[shape]) {
    const length = side.axis === 'x' ? sideLength(side, 1240, 600) : sideLength(side, 940, 450);
    ends[side.axis] += side.forwards ? length : -length;
  }
  expect(ends).toEqual({ x: 0, y: 0 });
});
