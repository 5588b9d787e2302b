import { expect, test } from 'vitest';
import { kitBySize } from '../../../src/engine/kits/kit-by-size.ts';
import { kitSide } from '../../../src/usecases/kits/kit-side.ts';

const PANEL = { thicknessMm: 35, heightMm: 200 };

test('a kit of panels that butt shows in every course what runs through and what runs back', () => {
  const size = { lengthMm: 1235, widthMm: 635, cutLengthMm: 0, cutWidthMm: 0 };
  const asked = { shape: 'rectangle', size, courses: 2, thicknessMm: 35, panelsMm: [600, 1200] } as const;
  const side = kitSide(kitBySize(asked).made!, { ...PANEL, courses: 2, groundMm: 150 }, 'metric');
  // 1200 and one end of 35 make 1235: each side butts at one end and runs through at the other, the other way round above.
  expect(side.courses.map((panels) => panels.map(({ widthMm, text }) => [Math.round(widthMm), text]))).toEqual([
    expect.arrayContaining([
      [1200, '1200'],
      [35, null],
    ]),
    expect.arrayContaining([
      [1200, '1200'],
      [35, null],
    ]),
  ]);
  expect(side.courses.map(([first]) => first!.text === null)).toContain(true);
  expect(side.pinsMm.map(Math.round)).toEqual([18, 1218]);
  expect([side.heightText, side.groundText]).toEqual(['400', '150']);
});

test('a row shows all of its panels and all of its pins', () => {
  const size = { lengthMm: 1800, widthMm: 0, cutLengthMm: 0, cutWidthMm: 0 };
  const asked = { shape: 'row', size, courses: 3, thicknessMm: 40, panelsMm: [900] } as const;
  const side = kitSide(kitBySize(asked).made!, { ...PANEL, thicknessMm: 40, courses: 3, groundMm: 0 }, 'metric');
  expect(side.courses).toHaveLength(3);
  expect(side.courses[2]!.map(({ xMm, text }) => [xMm, text])).toEqual([
    [0, '900'],
    [900, '900'],
  ]);
  expect(side.pinsMm).toEqual([20, 880, 920, 1780]);
});
