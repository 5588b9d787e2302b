import { describe, expect, test } from 'vitest';
import { type DrawingSizes, kitGeometry, type PlanOf, runText } from '../../../views/charts/kit-geometry.ts';

/** 20 round the plan on every side: two gaps of 4 and a line of 12. */
const sizes: DrawingSizes = {
  ...{ width: 240, height: 240, line: 12, figure: 6, gap: 4 },
  pin: { share: 0.25, least: 1, most: 3 },
};
const up = { x: 0, y: -1 };
const right = { x: 1, y: 0 };
const panel = (xMm: number, yMm: number, widthMm: number, depthMm: number, text: string) => ({
  ...{ xMm, yMm, widthMm, depthMm, text },
});
const plan = (sides: PlanOf['sides'], rest: Partial<PlanOf> = {}): PlanOf => ({
  ...{ lengthMm: 1000, widthMm: 500, thicknessMm: 40, sides, pins: [] },
  ...rest,
});

describe('a plan drawn to scale', () => {
  test('is as large as its width allows, with room for figures all round', () => {
    const { scale, width, height } = kitGeometry(plan([]), sizes);
    // (240 - 2 x 20) / 1000; 500 of that is 100 high, and 20 more on either side.
    expect([scale, width, height]).toEqual([0.2, 240, 140]);
  });

  test('or as its height allows', () => {
    const { scale, width, height } = kitGeometry(plan([], { lengthMm: 500, widthMm: 1000 }), sizes);
    expect([scale, width, height]).toEqual([0.2, 140, 240]);
  });

  test('has panels and pins where they stand', () => {
    const sides = [{ outwards: up, panels: [panel(0, 0, 960, 40, '960')] }];
    const geometry = kitGeometry(plan(sides, { pins: [{ xMm: 20, yMm: 20 }] }), sizes);
    expect(geometry.panels).toEqual([{ x: 20, y: 20, width: 192, height: 8 }]);
    expect(geometry.pins).toEqual([{ x: 24, y: 24 }]);
    expect(geometry.pinRadius).toBe(2);
  });

  test('keeps pins large enough to be seen, and no larger than fits', () => {
    expect(kitGeometry(plan([], { lengthMm: 10_000, widthMm: 10_000 }), sizes).pinRadius).toBe(1);
    expect(kitGeometry(plan([], { thicknessMm: 200 }), sizes).pinRadius).toBe(3);
  });

  test('writes each length beside its panel on the outside, upright along the sides', () => {
    const geometry = kitGeometry(
      plan([
        { outwards: up, panels: [panel(0, 0, 500, 40, '500'), panel(500, 0, 460, 40, '460')] },
        { outwards: right, panels: [panel(960, 0, 40, 500, '500')] },
      ]),
      sizes,
    );
    // Above: 4 + half a line of 12 over the panel's edge at 20. Beside: as far right of the edge at 20 + 200.
    expect(geometry.texts).toEqual([
      { x: 70, y: 10, text: '500', upright: false },
      { x: 166, y: 10, text: '460', upright: false },
      { x: 230, y: 70, text: '500', upright: true },
    ]);
  });

  test('writes one for the whole side where a panel is too short for its own', () => {
    const short = Array.from({ length: 20 }, (_, index) => panel(index * 50, 0, 50, 40, '50'));
    const { texts } = kitGeometry(plan([{ outwards: up, panels: short }]), sizes);
    expect(texts).toEqual([{ x: 120, y: 10, text: '20 × 50', upright: false }]);
  });
});

test('lengths that follow one another are counted', () => {
  const texts = (...all: string[]) => runText(all.map((text) => ({ text })));
  expect(texts('900')).toBe('900');
  expect(texts('900', '900', '450', '900')).toBe('2 × 900, 450, 900');
  expect(texts()).toBe('');
});
