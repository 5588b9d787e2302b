import { describe, expect, it } from 'vitest';
import type { Material } from '../../../shared/material.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { planYard } from '../../../src/engine/plan.ts';
import { audit } from '../../contract/audit-plan.mjs';
import { smallYard } from '../../support/small-yard.ts';

/** A pair of panels, each with a piece of 175 by 875 of a sheet of 1000 by 2000, mesh of 25. */
const yardWith = (mesh: Partial<Material>): YardFile => {
  const yard = smallYard();
  return {
    ...yard,
    materials: [
      ...yard.materials,
      {
        ...{ id: 'sheet', name: 'Mesh', unit: 'sheet', pack: 1, minimum: 0, kerfMm: 0, onHand: 0 },
        ...{ inSheets: true, sheetWidthMm: 1000, sheetLengthMm: 2000, meshMm: 25 },
        ...mesh,
      },
    ],
    castings: yard.castings.map((casting) => ({
      ...casting,
      sheets: [{ material: 'sheet', widthMm: 175, lengthMm: 875, count: 1, mayTurn: true }],
    })),
  };
};

const planOf = (mesh: Partial<Material>) => {
  const yard = yardWith(mesh);
  const plan = planYard(yard, { effort: 'quick' });
  expect(audit(yard, plan).faults).toEqual([]);
  return plan;
};

describe('a plan of a yard with mesh in sheets', () => {
  it('cuts its pieces from a sheet that is there, and buys none', () => {
    const plan = planOf({ onHand: 1, leadDays: 2 });
    expect(plan.sheets?.map(({ rest, pieces }) => [rest, pieces.length])).toEqual([[undefined, 2]]);
    expect(plan.buys.filter(({ material }) => material === 'sheet')).toEqual([]);
  });

  it('has no use for square metres in scraps that are too small: a whole sheet is bought, or it cannot be made', () => {
    // 9 m2, of which no piece can be cut.
    const rests = [{ widthMm: 1000, lengthMm: 150, count: 60 }];
    const bought = planOf({ rests, leadDays: 1 });
    expect(bought.buys.filter(({ material }) => material === 'sheet').map(({ quantity }) => quantity)).toEqual([1]);
    expect(planOf({ rests }).unplanned).toEqual([
      { order: '27-001', cause: 'material', what: 'sheet', reason: 'Mesh cannot be had: 1 more sheet is needed' },
    ]);
  });

  it('needs no sheet where rests hold them', () => {
    const plan = planOf({ rests: [{ widthMm: 350, lengthMm: 880, count: 1 }] });
    expect(plan.unplanned).toEqual([]);
    expect(plan.sheets?.map(({ rest }) => rest)).toEqual([{ widthMm: 350, lengthMm: 880 }]);
  });

  it('is as it was where mesh counts in square metres', () => {
    const yard = yardWith({ onHand: 1 });
    const plain = { ...yard, materials: yard.materials.map(({ inSheets: _no, ...one }) => one) };
    expect(planYard(plain, { effort: 'quick' })).toEqual(planYard(smallYard(), { effort: 'quick' }));
  });
});
