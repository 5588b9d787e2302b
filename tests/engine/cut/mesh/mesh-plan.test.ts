import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { MeshPiece } from '../../../../src/engine/cut/mesh/mesh-kinds.ts';
import { type MeshMaterial, type MeshPlan, meshPlan, wastePercent } from '../../../../src/engine/cut/mesh/mesh-plan.ts';
import { type SmallPiece, sheetsByHighs } from '../../../support/guillotine-patterns.ts';

const GRID = { acrossMm: 50, alongMm: 50 };
const sheet = (widthMm: number, lengthMm: number) => ({ widthMm, lengthMm });
const material = (more: Partial<MeshMaterial> = {}): MeshMaterial => ({
  sheet: sheet(1200, 2400),
  grid: GRID,
  rests: [],
  usable: sheet(200, 200),
  ...more,
});
const piece = (widthMm: number, lengthMm: number, count: number, mayTurn = true): MeshPiece => ({
  widthMm,
  lengthMm,
  count,
  mayTurn,
  for: 'B1',
});

const planOf = (from: MeshMaterial, pieces: MeshPiece[]): MeshPlan => {
  const answer = meshPlan(from, pieces);
  if (answer.is !== 'plan') throw new Error('a piece is too large');
  return answer.plan;
};

describe('a cut plan of mesh', () => {
  it('by hand: six of 180 by 890 side by side take 900 of a sheet of 1200 by 2400', () => {
    // 890 is 18 openings, 180 is 4: six side by side are 24 openings, the whole width, and 900 of the length.
    const plan = planOf(material(), [piece(180, 890, 6)]);
    expect(plan).toMatchObject({ whole: 1, atLeast: 1, isProven: true });
    expect(plan.sheets[0]!.kept).toEqual([{ xMm: 0, yMm: 900, widthMm: 1200, lengthMm: 1500 }]);
    expect(plan.sheets[0]!.cuts[0]).toMatchObject({ number: 1, cut: 'along', yMm: 900, lengthMm: 1200 });
    // 6 x 200 x 900 is cut, 6 x 180 x 890 stays: 118,800 of 2,880,000 mm2 are wire ends.
    expect(wastePercent(plan.sheets)).toBeCloseTo((100 * 118_800) / 2_880_000, 9);
  });

  it('takes a rest on hand instead of a sheet', () => {
    const plan = planOf(material({ rests: [sheet(600, 900), sheet(1200, 300)] }), [piece(180, 890, 3)]);
    expect(plan.whole).toBe(0);
    expect(plan.sheets.map((x) => x.rest)).toEqual([0]);
  });

  it('turns no piece that may not be turned', () => {
    expect(planOf(material({ sheet: sheet(200, 900) }), [piece(180, 890, 1, false)]).whole).toBe(1);
    expect(meshPlan(material({ sheet: sheet(900, 200) }), [piece(180, 890, 1, false)])).toMatchObject({
      is: 'too large',
    });
    expect(planOf(material({ sheet: sheet(900, 200) }), [piece(180, 890, 1)]).sheets[0]!.pieces[0]).toMatchObject({
      isTurned: true,
      trimTo: { widthMm: 890, lengthMm: 180 },
    });
  });

  it('says which pieces go on no sheet', () => {
    expect(meshPlan(material(), [piece(180, 890, 2), piece(1300, 1300, 1)])).toEqual({
      is: 'too large',
      pieces: [piece(1300, 1300, 1)],
    });
  });

  it('of no pieces opens nothing', () => {
    expect(planOf(material(), [piece(180, 890, 0)])).toEqual({ sheets: [], whole: 0, atLeast: 0, isProven: false });
  });

  it('of a roll takes as little of its length as it can', () => {
    // Mesh of 12.7, roll of 914.4 by 15240: 72 openings across. Four of 228.6 (18) side by side, 1016 (80) long.
    const roll = material({ sheet: sheet(914.4, 15_240), grid: { acrossMm: 12.7, alongMm: 12.7 } });
    const plan = planOf(roll, [piece(228.6, 1016, 8, false)]);
    expect(plan).toMatchObject({ whole: 1, isProven: true });
    expect(plan.sheets[0]!.kept[0]!.lengthMm).toBeCloseTo(15_240 - 2032, 6);
  });

  it('of more than can be looked through says how many sheets nobody could do without', () => {
    const many = [piece(180, 890, 40), piece(180, 590, 30), piece(280, 1180, 30), piece(130, 440, 30)];
    const plan = planOf(material(), many);
    expect(plan.isProven).toBe(false);
    expect(plan.whole).toBeGreaterThanOrEqual(plan.atLeast);
    // By area as cut: 40 x 0.18 + 30 x 0.12 + 30 x 0.36 + 30 x 0.0675 m2, in 2.88 m2 a sheet: 8.2.
    expect(plan.atLeast).toBeGreaterThanOrEqual(9);
    expect(plan.whole).toBeLessThanOrEqual(10);
  });
});

const anyPiece = fc.record({
  across: fc.integer({ min: 1, max: 5 }),
  along: fc.integer({ min: 1, max: 5 }),
  mayTurn: fc.boolean(),
  count: fc.integer({ min: 1, max: 2 }),
});
const anySize = fc.tuple(fc.integer({ min: 2, max: 4 }), fc.integer({ min: 2, max: 4 }));

const inMm = (x: SmallPiece): MeshPiece => piece(x.across * 50 - 10, x.along * 50, x.count, x.mayTurn);

/** What is cut lies on its sheet, nothing on anything else, every piece is there, and each cut goes through no piece. */
const check = (plan: MeshPlan, wanted: MeshPiece[]): void => {
  const cut = new Map<string, number>();
  for (const one of plan.sheets) {
    const rects = [...one.pieces, ...one.kept];
    for (const [i, a] of rects.entries()) {
      expect(a.xMm + a.widthMm).toBeLessThanOrEqual(one.size.widthMm + 1e-6);
      expect(a.yMm + a.lengthMm).toBeLessThanOrEqual(one.size.lengthMm + 1e-6);
      for (const b of rects.slice(i + 1)) {
        const apart =
          a.xMm + a.widthMm <= b.xMm ||
          b.xMm + b.widthMm <= a.xMm ||
          a.yMm + a.lengthMm <= b.yMm ||
          b.yMm + b.lengthMm <= a.yMm;
        expect(apart).toBe(true);
      }
    }
    for (const p of one.pieces) {
      expect(p.trimTo.widthMm).toBeLessThanOrEqual(p.widthMm);
      expect(p.trimTo.lengthMm).toBeLessThanOrEqual(p.lengthMm);
      const size = p.isTurned ? [p.trimTo.lengthMm, p.trimTo.widthMm] : [p.trimTo.widthMm, p.trimTo.lengthMm];
      cut.set(size.join(), (cut.get(size.join()) ?? 0) + 1);
    }
  }
  const asked = new Map<string, number>();
  for (const x of wanted) {
    const size = [x.widthMm, x.lengthMm].join();
    asked.set(size, (asked.get(size) ?? 0) + x.count);
  }
  expect(cut).toEqual(asked);
};

describe('against all cuttings there are, in HiGHS', () => {
  it('takes as few sheets, and of those throws as little away', async () => {
    const usable = (a: number, b: number) => Math.min(a, b) >= 2 && Math.max(a, b) >= 3;
    await fc.assert(
      fc.asyncProperty(
        fc.array(anyPiece, { minLength: 1, maxLength: 4 }),
        fc.array(anySize, { maxLength: 2 }),
        async (pieces, rests) => {
          const fitting = pieces.filter((x) => x.across <= 6 && x.along <= 5);
          const from = material({
            sheet: sheet(300, 250),
            rests: rests.map(([a, b]) => sheet(a * 50, b * 50)),
            usable: sheet(100, 150),
          });
          const plan = planOf(from, fitting.map(inMm));
          check(plan, fitting.map(inMm));
          expect(plan.isProven).toBe(true);
          const exact = await sheetsByHighs(fitting, { sheet: [6, 5], rests, isUsable: usable });
          const opened = plan.sheets.flatMap((x) => (x.rest === undefined ? [] : [rests[x.rest]!]));
          const largest = Math.max(
            0,
            ...plan.sheets.flatMap((x) => x.kept.map((r) => (r.widthMm * r.lengthMm) / 2500)),
          );
          const lost = opened.reduce((sum, [a, b]) => sum + a * b, 0) - largest;
          expect({ sheets: plan.whole, lost }).toEqual(exact);
        },
      ),
      { numRuns: 30 },
    );
  }, 60_000);

  it('and where it is found by filling, holds all pieces and stays above the bound', () => {
    fc.assert(
      fc.property(fc.array(anyPiece, { minLength: 8, maxLength: 12 }), (pieces) => {
        const fitting = pieces.map((x) => ({ ...x, count: x.count + 6 }));
        const plan = planOf(material({ sheet: sheet(300, 250), rests: [sheet(200, 200)] }), fitting.map(inMm));
        check(plan, fitting.map(inMm));
        expect(plan.whole).toBeGreaterThanOrEqual(plan.atLeast);
      }),
      { numRuns: 8 },
    );
  });
});
