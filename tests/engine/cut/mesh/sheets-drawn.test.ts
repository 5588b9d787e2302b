import { expect, test } from 'vitest';
import type { PlanSheet } from '../../../../shared/plan.ts';
import { cutsOfSheet } from '../../../../src/engine/cut/mesh/cuts-of-sheet.ts';
import { sheetsDrawn } from '../../../../src/engine/cut/mesh/sheets-drawn.ts';

const at = (xMm: number, yMm: number, widthMm: number, lengthMm: number) => ({ xMm, yMm, widthMm, lengthMm });
const SHEET = { widthMm: 1000, lengthMm: 2000 };
const drawn = (sheets: PlanSheet[]) =>
  sheetsDrawn(sheets, { sheet: SHEET, meshMm: 25, forOf: ({ for: batch }) => `a piece of ${batch}` });

test('cuts go from edge to edge of what is there by then, the shorter way first', () => {
  const parts = [at(0, 0, 200, 900), at(200, 0, 200, 900), at(0, 900, 1000, 1100)];
  expect(
    cutsOfSheet(at(0, 0, 1000, 2000), parts).map(({ cut, xMm, yMm, lengthMm }) => [cut, xMm, yMm, lengthMm]),
  ).toEqual([
    ['along', 0, 900, 1000],
    ['across', 200, 0, 900],
    ['across', 400, 0, 900],
  ]);
  expect(cutsOfSheet(at(0, 0, 200, 900), [at(0, 0, 200, 900)])).toEqual([]);
});

test('what two batches cut of one sheet is drawn on one, the rest where it lay', () => {
  const sheets: PlanSheet[] = [
    {
      ...{ material: 'mesh', for: 'B1', pieces: [at(0, 0, 175, 870)] },
      kept: [at(175, 0, 825, 875), at(0, 875, 1000, 1125)],
    },
    {
      ...{ material: 'mesh', for: 'B2', rest: { widthMm: 825, lengthMm: 875 } },
      pieces: [{ ...at(0, 0, 300, 400), isTurned: true }],
      kept: [],
    },
    { material: 'mesh', for: 'B2', rest: { widthMm: 400, lengthMm: 300 }, pieces: [at(0, 0, 300, 300)], kept: [] },
  ];
  const [first, second] = drawn(sheets);
  expect(drawn(sheets)).toHaveLength(2);
  expect(first).toMatchObject({
    ...{ size: SHEET, kept: [at(0, 875, 1000, 1125)] },
    pieces: [
      { ...at(0, 0, 175, 875), trimTo: { widthMm: 175, lengthMm: 870 }, for: 'a piece of B1' },
      { ...at(175, 0, 400, 300), isTurned: true, for: 'a piece of B2' },
    ],
  });
  expect(first!.rest).toBeUndefined();
  expect(second).toMatchObject({ size: { widthMm: 400, lengthMm: 300 }, rest: 1 });
});
