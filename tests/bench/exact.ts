import { planYard } from '../../src/engine/plan.ts';
import { audit } from '../contract/audit-plan.mjs';
import { exactOptimum } from '../support/exact/exact-optimum.ts';
import { gridYard } from '../support/exact/grid-yard.ts';

export interface ExactRow {
  seed: number;
  yard: string;
  pours: number;
  /** Weighted days late of the planner's plan, of the best plan known, and a number no plan is below. */
  planner: number;
  best: number;
  bound: number;
  /** The lower bound that the planner gives with its plan. */
  plannerBound: number;
  isProven: boolean;
  /** Faults of the best plan by the independent check; one of them makes the row worthless. */
  faults: string[];
  seconds: number;
}

/** Plans small grid yards with normal effort and solves each as a mixed-integer program, so many seconds each. */
export const exactRows = async (seeds: number[], seconds = 60): Promise<ExactRow[]> => {
  const rows: ExactRow[] = [];
  for (const seed of seeds) {
    const yard = gridYard(seed);
    const plan = planYard(yard);
    const exact = await exactOptimum(yard, plan, seconds);
    rows.push({
      seed,
      yard: yard.yard.name,
      pours: plan.pours.length,
      planner: plan.score.weightedDaysLate,
      best: exact.weightedDaysLate,
      bound: exact.bound,
      plannerBound: plan.bound?.weightedDaysLate ?? 0,
      isProven: exact.isProven,
      faults: exact.plan ? audit(yard, exact.plan).faults : [],
      seconds: exact.seconds,
    });
  }
  return rows;
};

/** The rows in a few lines: how many were proven, on how many of those the planner is optimal, what was missed or is open. */
export const exactSummary = (rows: ExactRow[]): string[] => {
  const proven = rows.filter((row) => row.isProven);
  const missed = proven.filter((row) => row.planner > row.best);
  const open = rows.filter((row) => !row.isProven);
  const name = (row: ExactRow) =>
    `${row.seed} (${row.planner}; ${row.best === row.bound ? row.best : `${row.bound}–${row.best}`})`;
  const share = ((100 * (proven.length - missed.length)) / Math.max(1, proven.length)).toFixed(0);
  return [
    `${proven.length} of ${rows.length} small yards proven; normal effort optimal on ${proven.length - missed.length} of them, ${share} %`,
    `missed, seed (planner; optimum): ${missed.map(name).join(', ') || 'none'}`,
    `not proven, seed (planner; bound–best known): ${open.map(name).join(', ') || 'none'}`,
    `planner's own bound above the best plan known: ${rows.filter((row) => row.plannerBound > row.best + 1e-6).length}`,
    `faults in exact plans: ${rows.flatMap((row) => row.faults).length}`,
  ];
};

/** The seeds whose rows are published. */
export const EXACT_SEEDS = Array.from({ length: 40 }, (_, seed) => seed);
