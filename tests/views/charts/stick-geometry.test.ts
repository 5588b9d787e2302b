import { expect, test } from 'vitest';
import { type StickSizes, stickGeometry } from '../../../views/charts/stick-geometry.ts';

const SIZES: StickSizes = { width: 300, bar: 20, line: 16, figure: 7, gap: 4 };
const pieces = (count: number, mm: number) => Array.from({ length: count }, () => ({ mm, text: String(mm) }));
const left = (mm: number, isKept = true) => ({ mm, length: `${mm} mm`, isKept });

test('pieces lie one after another with saw cuts between them, and the rest is at the end', () => {
  const drawn = stickGeometry({ bar: { mm: 3000, kerfMm: 2, cuts: pieces(4, 190) }, left: left(2232) }, 3000, SIZES);
  expect([drawn.width, drawn.height]).toEqual([300, 36]);
  expect(drawn.pieces.map(({ x }) => Number(x.toFixed(6)))).toEqual([0, 19.2, 38.4, 57.6]);
  expect(drawn.left?.x).toBeCloseTo(76.8, 9);
  expect(drawn.left?.width).toBeCloseTo(223.2, 9);
});

test('pieces too narrow for a figure of their own have one together, and none where that has no room', () => {
  const texts = (count: number, mm: number) =>
    stickGeometry({ bar: { mm: 3000, kerfMm: 0, cuts: pieces(count, mm) }, left: null }, 3000, SIZES).texts;
  expect(texts(2, 600).map(({ text, x }) => [text, x])).toEqual([
    ['600', 30],
    ['600', 90],
  ]);
  expect(texts(4, 190).map(({ text, x }) => [text, x])).toEqual([['4 × 190', 38]]);
  expect(texts(1, 190)).toEqual([]);
});

test('of a shorter stick everything is to the scale of the longest', () => {
  const drawn = stickGeometry(
    { bar: { mm: 1000, kerfMm: 0, cuts: pieces(1, 600) }, left: left(400, false) },
    2000,
    SIZES,
  );
  expect(drawn.width).toBe(150);
  expect(drawn.pieces).toEqual([{ x: 0, width: 90 }]);
  expect(drawn.left).toEqual({ x: 90, width: 60, isKept: false });
  expect(drawn.texts.map(({ text }) => text)).toEqual(['600']);
});

test('what is kept says how long it is, where there is room', () => {
  const kept = (mm: number) =>
    stickGeometry({ bar: { mm: 3000, kerfMm: 0, cuts: [] }, left: left(mm) }, 3000, SIZES).texts;
  expect(kept(2232)).toMatchObject([{ text: 'keep 2232 mm', y: 10 }]);
  expect(kept(400)).toEqual([]);
});
