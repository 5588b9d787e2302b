import { expect, test } from 'vitest';
import { boxesPath } from '../../../views/charts/boxes-path.ts';

test('boxes of one look are one path, each drawn round and closed, to a tenth of a pixel', () => {
  expect(boxesPath([])).toBe('');
  expect(
    boxesPath([
      { x: 2, y: 1, width: 10, height: 4 },
      { x: 0.26, y: 8, width: 1 / 3, height: 4 },
    ]),
  ).toBe('M2 1h10v4h-10zM0.3 8h0.3v4h-0.3z');
});
