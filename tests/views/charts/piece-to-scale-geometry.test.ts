import { describe, expect, test } from 'vitest';
import { pieceDrawn, piecesLaid } from '../../../views/charts/piece-to-scale-geometry.ts';

const panel = { lengthMm: 600, heightMm: 200, thicknessMm: 40 };

describe('a piece to scale', () => {
  test('is drawn from the front and from its end, beside the longest of all', () => {
    // 120 for 1200 mm is a tenth.
    expect(pieceDrawn(panel, 1200, { width: 120, gap: 8 })).toEqual({
      ...{ width: 72, height: 20 },
      front: { x: 0, y: 0, width: 60, height: 20 },
      end: { x: 68, y: 0, width: 4, height: 20 },
    });
  });

  test('is never longer than there is room for, nor too thin to be seen', () => {
    const long = pieceDrawn({ ...panel, lengthMm: 2400, thicknessMm: 5 }, 1200, { width: 120, gap: 8 });
    expect([long.front.width, long.end.width]).toEqual([120, 2]);
  });
});

describe('pieces laid out', () => {
  test('go on in the next row where one is full, below the tallest of the row', () => {
    const pieces = [
      { lengthMm: 600, heightMm: 300, count: 1 },
      { lengthMm: 600, heightMm: 200, count: 2 },
    ];
    const laid = piecesLaid(pieces, 0.1, { width: 130, gap: 10 });
    expect(laid.pieces).toEqual([
      { x: 0, y: 0, width: 60, height: 30 },
      { x: 0, y: 40, width: 60, height: 20 },
      { x: 70, y: 40, width: 60, height: 20 },
    ]);
    expect([laid.width, laid.height]).toEqual([130, 60]);
    expect(piecesLaid(pieces, 0.1, { width: 200, gap: 10 }).pieces.map(({ y }) => y)).toEqual([0, 0, 0]);
  });

  test('of one size stand in rows of as many each, and one that is wider than a row in a row of its own', () => {
    const rowsOf = (count: number, width: number) =>
      piecesLaid([{ lengthMm: 600, heightMm: 200, count }], 0.1, { width, gap: 10 }).pieces.map(({ y }) => y);
    expect(rowsOf(4, 200)).toEqual([0, 0, 30, 30]);
    expect(rowsOf(7, 200)).toEqual([0, 0, 0, 30, 30, 30, 60]);
    expect(rowsOf(2, 50)).toEqual([0, 30]);
  });

  test('of nothing take no room', () => {
    expect(piecesLaid([], 0.1, { width: 130, gap: 10 })).toEqual({ width: 0, height: 0, pieces: [] });
  });
});
