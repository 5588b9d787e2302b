import type { PlanFile } from '../../../shared/plan.ts';
import { minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { sessions } from '../../contract/audit-plan.mjs';
import { columnsOf, type ExactModel } from './exact-model.ts';
import { mouldRows } from './mould-rows.ts';
import { orderRows } from './order-rows.ts';
import { planAsStart } from './plan-as-start.ts';
import { materialRows, mixerRows, peopleRows } from './shared-rows.ts';
import { solutionAsPlan } from './solution-as-plan.ts';
import { solve } from './solve.ts';

export interface ExactOptimum {
  /** The best there is was found: `weightedDaysLate` equals `bound`. */
  isProven: boolean;
  weightedDaysLate: number;
  /** No plan is below this. */
  bound: number;
  /** The best plan found; null when none was, or when it needs sessions that were not looked at. */
  plan: PlanFile | null;
  sessions: number;
  columns: number;
  seconds: number;
}

/** The whole program of a yard over its first sessions. */
export const exactModel = (yard: YardFile, sessionCount: number): ExactModel => {
  const model = columnsOf(yard, sessionCount);
  const turned = mouldRows(model);
  orderRows(model, turned);
  peopleRows(model);
  mixerRows(model);
  materialRows(model);
  return model;
};

/** Sessions up to the last task of a plan, and one more. */
export const sessionsFor = (yard: YardFile, plan: PlanFile): number => {
  const ends = [...plan.pours, ...plan.strips].map((x) => minuteOf(x.stripEnd));
  const packs = plan.orders.flatMap((x) => (x.packEnd ? [minuteOf(x.packEnd)] : []));
  const last = Math.max(0, ...ends, ...packs);
  return sessions(yard).filter((x) => x.start < last).length + 1;
};

/**
 * Least weighted days late of any plan in which every order is planned, by a mixed-integer program over the first
 * sessions: those that `known`, a plan that obeys the rules, works in and one more. `known` is also where the solver
 * starts from. Sessions after those count as if they could finish anything, so the bound holds for all plans.
 */
export const exactOptimum = async (yard: YardFile, known: PlanFile, seconds: number): Promise<ExactOptimum> => {
  const count = sessionsFor(yard, known);
  const model = exactModel(yard, count);
  const solved = await solve(model.lp, { seconds, start: planAsStart(model, known) });
  if (solved.status === 'infeasible') throw new Error('the program has no solution, yet a plan is known');
  const { values } = solved;
  const isLater = values !== null && model.later.some(({ column }) => values[column]! > 0.5);
  const plan = values && !isLater ? solutionAsPlan(model, values) : null;
  const best = Math.min(known.score.weightedDaysLate, plan ? Math.round(solved.objective) : Number.POSITIVE_INFINITY);
  const bound = solved.status === 'optimal' ? Math.round(solved.objective) : Math.ceil(solved.bound - 1e-6);
  return {
    isProven: bound >= best,
    weightedDaysLate: best,
    bound,
    plan,
    sessions: count,
    columns: model.lp.cost.length,
    seconds: solved.seconds,
  };
};
