import { describe, expect, test } from 'vitest';
import type { YardFile } from '../../shared/yard-file.ts';
import { planYard } from '../../src/engine/plan.ts';
import { audit } from '../contract/audit-plan.mjs';
import { exactModel, exactOptimum, sessionsFor } from '../support/exact/exact-optimum.ts';
import { gridYard } from '../support/exact/grid-yard.ts';
import { LinearModel } from '../support/exact/linear-model.ts';
import { planAsStart } from '../support/exact/plan-as-start.ts';
import { solve } from '../support/exact/solve.ts';

/** Seconds for one yard at most; those below take one or two on an idle machine. */
const SECONDS = 100;
const timeout = SECONDS * 1200;

describe('the solver', () => {
  // Worked by hand: 3 x + 5 y with x + y <= 4.5 and x <= 3, whole: x 0, y 4 gives 20, better than 3 and 1 (14).
  test('finds the best whole numbers', async () => {
    const lp = new LinearModel();
    const [x, y] = [lp.count(3, -3), lp.count(10, -5)];
    lp.atMost(
      [
        [x, 1],
        [y, 1],
      ],
      4.5,
    );
    const solved = await solve(lp, { seconds: 5 });
    expect(solved.status).toBe('optimal');
    expect(solved.objective).toBeCloseTo(-20);
    expect([...solved.values!]).toEqual([0, 4]);
  });

  test('says when there is no solution', async () => {
    const lp = new LinearModel();
    const x = lp.count(10);
    lp.exactly([[x, 2]], 5);
    expect((await solve(lp, { seconds: 5 })).status).toBe('infeasible');
  });
});

/** The program with every whole column held at what the plan of another yard like it says. */
const withPlanOf = async (yard: YardFile, planned: YardFile) => {
  const plan = planYard(planned, { effort: 'quick' });
  const model = exactModel(yard, sessionsFor(yard, plan));
  return { plan, solved: await solve(model.lp, { seconds: SECONDS, fixed: planAsStart(model, plan) }) };
};

describe('the exact program', () => {
  test.each([0, 1, 2, 3, 4, 5])('takes the plan of yard %i as a solution, as late as it is', async (seed) => {
    const { plan, solved } = await withPlanOf(gridYard(seed), gridYard(seed));
    expect(solved.status).toBe('optimal');
    expect(solved.objective).toBeCloseTo(plan.score.weightedDaysLate);
  });

  // Each change makes the plan of the yard as it was impossible: the program has to refuse it.
  test.each<[string, number, (yard: YardFile) => YardFile]>([
    [
      'less time in which to demould',
      0,
      (y) => ({ ...y, mixes: y.mixes.map((m) => ({ ...m, demouldMinutes: m.demouldMinutes + 2880 })) }),
    ],
    ['no room on the rack', 25, (y) => ({ ...y, yard: { ...y.yard, rackSpaces: 0 } })],
    ['no mixer', 2, (y) => ({ ...y, yard: { ...y.yard, mixers: 0 } })],
    ['no mortar', 0, (y) => ({ ...y, materials: y.materials.map((m) => ({ ...m, onHand: 0 })) })],
    [
      'twice as many pieces in each order',
      0,
      (y) => ({ ...y, orders: y.orders.map((o) => ({ ...o, lines: [...o.lines, ...o.lines] })) }),
    ],
  ])('refuses the plan of a yard with %s', async (_, seed, change) => {
    const yard = gridYard(seed);
    const refused = await withPlanOf(change(yard), yard).then(
      ({ solved }) => solved.status,
      (error: Error) => error.message,
    );
    expect(refused).toMatch(/infeasible|no column/);
  });
});

describe('normal effort beside the proven optimum', () => {
  test.each([12, 14, 36])('yard %i: as good', { timeout }, async (seed) => {
    const yard = gridYard(seed);
    const plan = planYard(yard);
    const exact = await exactOptimum(yard, plan, SECONDS);
    expect(exact.isProven).toBe(true);
    expect(audit(yard, exact.plan!)).toMatchObject({ faults: [], score: { weightedDaysLate: exact.weightedDaysLate } });
    expect(plan.score.weightedDaysLate).toBe(exact.weightedDaysLate);
    expect(plan.bound!.weightedDaysLate).toBeLessThanOrEqual(exact.weightedDaysLate + 1e-6);
  });

  // Yards on which quick planning is behind: what is best is the program's own plan, not the one it starts from.
  test.each([25])('yard %i: never below it', { timeout }, async (seed) => {
    const yard = gridYard(seed);
    const exact = await exactOptimum(yard, planYard(yard, { effort: 'quick' }), SECONDS);
    expect(exact.isProven).toBe(true);
    expect(audit(yard, exact.plan!)).toMatchObject({ faults: [], score: { weightedDaysLate: exact.weightedDaysLate } });
    const plan = planYard(yard);
    expect(plan.score.weightedDaysLate).toBeGreaterThanOrEqual(exact.weightedDaysLate);
    expect(plan.bound!.weightedDaysLate).toBeLessThanOrEqual(exact.weightedDaysLate + 1e-6);
  });
});
