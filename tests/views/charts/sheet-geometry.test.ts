import { expect, test } from 'vitest';
import type { SheetFacts } from '../../../src/usecases/today/mesh-list.ts';
import { type SheetSizes, sheetGeometry } from '../../../views/charts/sheet-geometry.ts';

const SIZES: SheetSizes = { width: 300, height: 300, figure: 7, line: 14, gap: 4 };
const part = (xMm: number, yMm: number, widthMm: number, lengthMm: number) => ({
  ...{ xMm, yMm, widthMm, lengthMm },
  text: `${widthMm} × ${lengthMm}`,
});
const sheet = (more: Partial<SheetFacts>): SheetFacts => ({
  ...{ size: '', whole: true, widthMm: 1000, lengthMm: 2000, pieces: [], kept: [], cuts: [], parts: [], rests: [] },
  ...more,
});

test('everything lies to one scale, as large as there is room', () => {
  const drawn = sheetGeometry(sheet({ parts: [part(0, 0, 1000, 1000), part(0, 1000, 500, 1000)] }), SIZES);
  expect([drawn.width, drawn.height, drawn.isCropped]).toEqual([150, 300, false]);
  expect(drawn.pieces).toEqual([
    { x: 0, y: 0, width: 150, height: 150 },
    { x: 0, y: 150, width: 75, height: 150 },
  ]);
});

test('of a long rest only the beginning is drawn', () => {
  const cut = { number: 1, way: 'across', xMm: 0, yMm: 500, lengthMm: 1000, at: '500 mm' } as const;
  const drawn = sheetGeometry(
    sheet({ lengthMm: 6000, parts: [part(0, 0, 1000, 500)], cuts: [cut], rests: [part(0, 500, 1000, 5500)] }),
    SIZES,
  );
  // 500 and a quarter of 1000, by 300 / 1000.
  expect([drawn.width, drawn.height, drawn.isCropped]).toEqual([300, 225, true]);
  expect(drawn.rests).toEqual([{ x: 0, y: 150, width: 300, height: 75 }]);
  expect(drawn.cuts).toEqual([{ number: 1, x1: 0, y1: 150, x2: 300, y2: 150 }]);
});

test('a figure that only fits upright is turned, and one that fits nowhere is left out', () => {
  const texts = (widthMm: number, lengthMm: number) =>
    sheetGeometry(sheet({ lengthMm: 1000, parts: [part(0, 0, widthMm, lengthMm), part(0, 999, 1, 1)] }), SIZES).texts;
  expect(texts(600, 200)).toMatchObject([{ text: '600 × 200', upright: false }]);
  expect(texts(100, 600)).toMatchObject([{ text: '100 × 600', upright: true }]);
  expect(texts(100, 100)).toEqual([]);
});
