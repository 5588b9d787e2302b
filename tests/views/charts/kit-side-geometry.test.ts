import { describe, expect, test } from 'vitest';
import type { KitSide } from '../../../src/usecases/kits/kit-side.ts';
import { type SideSizes, sideGeometry } from '../../../views/charts/kit-side-geometry.ts';

/** 15 beside it on either side. */
const sizes: SideSizes = { width: 230, height: 200, line: 10, figure: 6, gap: 5 };
const side = (rest: Partial<KitSide> = {}): KitSide => ({
  ...{ lengthMm: 1000, courseMm: 200, groundMm: 100, heightText: '400', groundText: '100', pinsMm: [20] },
  courses: [
    [{ xMm: 0, widthMm: 1000, text: '1000' }],
    [
      { xMm: 0, widthMm: 40, text: null },
      { xMm: 40, widthMm: 920, text: '920' },
      { xMm: 960, widthMm: 40, text: null },
    ],
  ],
  ...rest,
});

describe('a kit from the side, drawn to scale', () => {
  test('stands on the ground, the first course lowest, and shows ends of panels that run back', () => {
    const { scale, width, groundY, panels, ends } = sideGeometry(side(), sizes);
    // (230 - 2 x 15) / 1000; two courses of 200 are 80 high, below a gap of 5.
    expect([scale, width, groundY]).toEqual([0.2, 230, 85]);
    expect(panels).toEqual([
      { x: 15, y: 45, width: 200, height: 40 },
      { x: 23, y: 5, width: 184, height: 40 },
    ]);
    expect(ends.map(({ x, width: wide }) => [x, wide])).toEqual([
      [15, 8],
      [207, 8],
    ]);
  });

  test('has pins from the top of it down into the ground', () => {
    const { pins, height } = sideGeometry(side(), sizes);
    // 100 deep is 20 below the ground at 85.
    expect(pins).toEqual([{ x: 19, top: 5, foot: 105 }]);
    expect(height).toBe(110);
  });

  test('writes its height beside it, and a length where there is room for it', () => {
    const texts = (width: number) => sideGeometry(side(), { ...sizes, width }).texts.map(({ text }) => text);
    expect(texts(230)).toEqual(['400', '1000', '920']);
    // 0.02 to a millimetre: a panel is 20 long, and its figure 24.
    expect(texts(50)).toEqual(['400']);
  });

  test('is as large as its height allows where it is high', () => {
    expect(sideGeometry(side({ courseMm: 1000 }), sizes).scale).toBeCloseTo(200 / 2100, 9);
  });
});
