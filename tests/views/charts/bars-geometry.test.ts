import { expect, test } from 'vitest';
import { barsGeometry } from '../../../views/charts/bars-geometry.ts';

const sizes = { width: 100, height: 40, top: 0, bottom: 0 };

test('bars stand on nothing, or hang from it', () => {
  const { bars, zeroY, middles } = barsGeometry([10, -10], sizes);
  expect(zeroY).toBe(20);
  expect(bars).toEqual([
    { x: 7.5, y: 0, width: 35, height: 20 },
    { x: 57.5, y: 20, width: 35, height: 20 },
  ]);
  expect(middles).toEqual([25, 75]);
});

test('what is not known has a place and no bar; all alike, or none, is no fault', () => {
  expect(barsGeometry([null, 8], { ...sizes, top: 5, bottom: 6 })).toMatchObject({
    height: 51,
    zeroY: 45,
    bars: [null, { y: 5, height: 40 }],
  });
  expect(barsGeometry([null, null], sizes).bars).toEqual([null, null]);
  expect(barsGeometry([0], sizes).bars).toEqual([{ x: 15, y: 0, width: 70, height: 0 }]);
});
