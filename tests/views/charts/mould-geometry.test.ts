import { expect, test } from 'vitest';
import { mouldDrawn } from '../../../views/charts/mould-geometry.ts';

const sizes = { width: 160, height: 30, bar: 4, gap: 3 };
const mould = { lengthMm: 600, turnsToSealing: 2, turnsBetweenCoats: 8 };

test('a mould is drawn to its length beside the longest, with its turns left to the coat', () => {
  expect(mouldDrawn(mould, 1200, sizes)).toEqual({
    ...{ width: 80, height: 30, inAll: 37 },
    coat: { y: 33, height: 4, left: 20 },
  });
});

test('one that is never sealed has no bar, and one that is due has an empty one', () => {
  expect(mouldDrawn({ ...mould, turnsToSealing: null, turnsBetweenCoats: null }, 1200, sizes).coat).toBeNull();
  expect(mouldDrawn({ ...mould, turnsToSealing: 0 }, 1200, sizes).coat).toMatchObject({ left: 0 });
});

test('one of which no length is known is as long as the longest, and none is too short to be seen', () => {
  expect(mouldDrawn({ ...mould, lengthMm: null }, 1200, sizes).width).toBe(160);
  expect(mouldDrawn({ ...mould, lengthMm: 50 }, 1200, sizes).width).toBe(32);
  expect(mouldDrawn(mould, 0, sizes).width).toBe(160);
});
