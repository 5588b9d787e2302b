import { expect, test } from 'vitest';
import { piecesGeometry } from '../../../views/charts/pieces-geometry.ts';

test('pieces stand side by side, a line between two of a group', () => {
  expect(piecesGeometry([1, 0, 2], { width: 100, piece: 14 })).toEqual([
    { x: 0, width: 14, between: [] },
    { x: 14, width: 0, between: [] },
    { x: 14, width: 28, between: [28] },
  ]);
});

test('many are narrower, very many without lines, and never wider than the drawing', () => {
  expect(piecesGeometry([10, 10], { width: 100, piece: 14 })).toMatchObject([
    { x: 0, width: 50, between: { length: 9 } },
    { x: 50, width: 50, between: { length: 9 } },
  ]);
  expect(piecesGeometry([300, 100], { width: 100, piece: 14 })).toEqual([
    { x: 0, width: 75, between: [] },
    { x: 75, width: 25, between: [] },
  ]);
  expect(piecesGeometry([0, 0], { width: 100, piece: 14 })).toEqual([
    { x: 0, width: 0, between: [] },
    { x: 0, width: 0, between: [] },
  ]);
});
