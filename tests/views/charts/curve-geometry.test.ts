import { expect, test } from 'vitest';
import { curveGeometry, labelRows } from '../../../views/charts/curve-geometry.ts';

const sizes = { width: 110, height: 40, left: 10, top: 5, bottom: 6 };

test('a curve runs through what is known, and begins anew after what is not', () => {
  const drawn = curveGeometry(
    [
      { hours: 0, share: null },
      { hours: 10, share: 0.5 },
      { hours: 15, share: 0.75 },
      { hours: 18, share: null },
      { hours: 20, share: 1 },
    ],
    20,
    sizes,
  );
  expect(drawn).toMatchObject({ width: 110, height: 51, noneY: 45, line: 'M60 25L85 15M110 5' });
  expect([drawn.xOf(5), drawn.yOf(0.25), drawn.yOf(1.2)]).toEqual([35, 35, 5]);
});

test('nothing known is no line', () => {
  expect(curveGeometry([{ hours: 0, share: null }], 0, sizes).line).toBe('');
});

test('texts that would touch stand above each other, others stay', () => {
  const wide = { width: 60 };
  expect(
    labelRows([
      { x: 0, y: 50, ...wide },
      { x: 10, y: 45, ...wide },
      { x: 65, y: 40, ...wide },
      { x: 200, y: 39, ...wide },
    ]),
  ).toEqual([50, 34, 18, 39]);
});
