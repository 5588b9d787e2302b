import type { Score } from '../../../shared/plan.ts';
import { dayNumber } from '../../../shared/time.ts';
import { type Finding, finder, TOLERANCE } from './finding.ts';
import type { Ground } from './ground.ts';

/** The score as it follows from the tasks and orders of a plan. */
const scoreOf = ({ plan, orders, today }: Ground): Score => {
  const weightOf = (id: string): number => orders.get(id)!.weight;
  const sum = (values: number[]): number => values.reduce((a, b) => a + b, 0);
  return {
    unplannedWeight: sum(plan.unplanned.map((x) => weightOf(x.order))),
    weightedDaysLate: sum(plan.orders.map((x) => weightOf(x.id) * x.daysLate)),
    weightedDaysAfterWanted: sum(
      plan.orders.map(({ id, completesOn }) => {
        const { weight, wanted } = orders.get(id)!;
        return wanted === undefined ? 0 : weight * Math.max(0, dayNumber(completesOn) - dayNumber(wanted));
      }),
    ),
    batches: plan.batches.length,
    bags: sum(plan.batches.map((x) => x.bags)),
    weightedCompletionDays: sum(plan.orders.map((x) => weightOf(x.id) * (dayNumber(x.completesOn) - today))),
  };
};

/**
 * R0, score: what a plan says it is worth is what its orders and batches come to.
 *
 * Example: a plan of 3 batches that says 2 is found: "score.batches is 3".
 */
export const checkScore = (ground: Ground): Finding[] => {
  const findings: Finding[] = [];
  const score = scoreOf(ground);
  for (const key of Object.keys(score) as (keyof Score)[])
    if (!(Math.abs(score[key] - ground.plan.score[key]) < TOLERANCE))
      finder(findings, 'R0')(`score.${key} is ${score[key]}`);
  return findings;
};
