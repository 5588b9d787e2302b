import { expect, test } from 'vitest';
import { pairsGeometry } from '../../../views/charts/pairs-geometry.ts';

const SIZES = { width: 100, height: 40, top: 10, bottom: 10 };

test('bars stand side by side on one line, the highest as high as there is room for', () => {
  expect(pairsGeometry([{ before: 5, now: 10 }], SIZES)).toEqual({
    ...{ width: 100, height: 60, baseY: 50 },
    pairs: [
      {
        before: { x: 12, y: 30, width: 38, height: 20 },
        now: { x: 50, y: 10, width: 38, height: 40 },
        middle: 50,
      },
    ],
    most: { amount: 10, x: 69, y: 6 },
  });
});

test('nothing has no bar, and nothing at all no highest', () => {
  const { pairs, most } = pairsGeometry([{ before: 0, now: 0 }], SIZES);
  expect([pairs[0], most]).toEqual([{ before: null, now: null, middle: 50 }, null]);
  expect(pairsGeometry([], SIZES).pairs).toEqual([]);
});
