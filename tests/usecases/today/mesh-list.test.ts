import { expect, test } from 'vitest';
import type { PlanFile } from '../../../shared/plan.ts';
import { meshList } from '../../../src/usecases/today/mesh-list.ts';
import { sheetCutsText, sheetLine, wasteText } from '../../../views/today/sheet-text.ts';
import { plannedYard } from '../../support/planned-yard.ts';

/** A roll of 1000 by 6000 with wires 25 mm apart, and a rest; each piece takes one of 175 by 875. */
const yard = (rests: { widthMm: number; lengthMm: number; count: number }[] = []) => {
  const from = plannedYard();
  const [mesh] = from.materials;
  const casting = from.castings[0]!;
  return {
    ...from,
    materials: [{ ...mesh!, name: 'Mesh', sheetWidthMm: 1000, sheetLengthMm: 6000, meshMm: 25, rests }],
    castings: [
      {
        ...{ ...casting, name: 'Panel 900' },
        sheets: [{ material: mesh!.id, widthMm: 175, lengthMm: 870, count: 1, mayTurn: false }],
      },
    ],
  };
};
const pours = (count: number, batch = 'B1') =>
  Array.from({ length: count }, () => ({ batch, casting: plannedYard().castings[0]!.id }));
const listed = (count: number, from = yard()) =>
  meshList({ pours: [...pours(count), ...pours(3, 'B9')] } as unknown as PlanFile, from, new Set(['B1']), 'metric');

// By hand: five of 175 side by side are 875 of 1000, and 870 are 35 openings of 25, 875: 5125 of the roll are kept.
test('what a session pours is cut of the roll, and the rest kept in one piece', () => {
  const [mesh] = listed(5);
  expect(mesh).toMatchObject({ name: 'Mesh', whole: 1, atLeast: 1 });
  const [sheet] = mesh!.sheets;
  expect(sheet).toMatchObject({
    ...{ size: '1000 mm by 6000 mm', whole: true },
    pieces: [{ size: '175 mm by 870 mm', count: 5, piece: 'Panel 900' }],
    kept: ['1000 mm by 5125 mm'],
  });
  expect(sheet!.cuts[0]).toMatchObject({ number: 1, way: 'across', at: '875 mm' });
  expect(sheetLine(mesh!.name, sheet!)).toBe(
    'Mesh, a whole one of 1000 mm by 6000 mm: 5 × 175 mm by 870 mm for Panel 900; keep 1000 mm by 5125 mm',
  );
  expect(sheetCutsText(sheet!)).toMatch(
    /^Cut beside a wire, in this order: 1 across at 875 mm, 2 lengthways at 175 mm,/,
  );
});

test('a rest that is there is cut first', () => {
  const [mesh] = listed(2, yard([{ widthMm: 400, lengthMm: 900, count: 1 }]));
  expect(mesh).toMatchObject({ whole: 0, sheets: [{ size: '400 mm by 900 mm', whole: false, kept: [] }] });
  // 0.36 m2 less two of 175 by 870: 15.4 %.
  expect(wasteText(mesh!)).toMatch(/^15 % of what is cut up is waste/);
  expect(wasteText({ ...mesh!, whole: 3, atLeast: 2 })).toMatch(/It takes 3 whole ones; with luck 2 would do\.$/);
});

test('nothing is said where nothing is cut', () => {
  expect(listed(0)).toEqual([]);
  expect(meshList({ pours: pours(2) } as unknown as PlanFile, plannedYard(), new Set(['B1']), 'metric')).toEqual([]);
});

test('what is in sheets is cut as the plan has it', () => {
  const from = yard([{ widthMm: 400, lengthMm: 900, count: 1 }]);
  const inSheets = { ...from, materials: from.materials.map((one) => ({ ...one, inSheets: true })) };
  const material = from.materials[0]!.id;
  const piece = { widthMm: 175, lengthMm: 870, xMm: 0, yMm: 0 };
  const sheets = [
    { material, for: 'B1', pieces: [piece], kept: [{ widthMm: 1000, lengthMm: 5125, xMm: 0, yMm: 875 }] },
    { material, for: 'B9', rest: { widthMm: 400, lengthMm: 900 }, pieces: [piece], kept: [] },
  ];
  const plan = { pours: [...pours(1), ...pours(1, 'B9')], sheets } as unknown as PlanFile;
  const [mesh] = meshList(plan, inSheets, new Set(['B1']), 'metric');
  // The rest is there, and the plan has another use for it.
  expect(mesh).toMatchObject({ whole: 1, atLeast: 0 });
  expect(mesh!.sheets.map((sheet) => sheetLine(mesh!.name, sheet))).toEqual([
    'Mesh, a whole one of 1000 mm by 6000 mm: 1 × 175 mm by 870 mm for Panel 900; keep 1000 mm by 5125 mm',
  ]);
  expect(meshList({ ...plan, sheets: [] }, inSheets, new Set(['B1']), 'metric')).toEqual([]);
});
