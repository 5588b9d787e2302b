import { expect, test } from 'vitest';
import { sharesGeometry } from '../../../views/charts/shares-geometry.ts';

test('parts lie one after another, the longest row as long as there is room for', () => {
  const sizes = { width: 100, row: 20, bar: 10, names: 10, figures: 10 };
  expect(sharesGeometry([[3, 1], [2], [0, 0]], sizes)).toEqual({
    ...{ width: 100, height: 60, bar: 10 },
    rows: [
      {
        ...{ middle: 10, y: 5, end: 90 },
        parts: [
          { x: 10, width: 60 },
          { x: 70, width: 20 },
        ],
      },
      { middle: 30, y: 25, end: 50, parts: [{ x: 10, width: 40 }] },
      {
        ...{ middle: 50, y: 45, end: 10 },
        parts: [
          { x: 10, width: 0 },
          { x: 10, width: 0 },
        ],
      },
    ],
  });
});
