import type { PlanFile } from '../../../shared/plan.ts';
import { dayNumber } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { type Judged, mayTakePlace } from '../../engine/standing/may-take-place.ts';

/** A plan as it is judged; batches, bags and days till all is ready in weighted days. */
const judgedPlan = ({ batchWorthDays, bagWorthDays }: YardFile['yard'], { score, orders }: PlanFile): Judged => ({
  figures: {
    ...score,
    cost: batchWorthDays * score.batches + bagWorthDays * score.bags + score.weightedCompletionDays,
  },
  orders: new Map(orders.map(({ id, daysLate, completesOn }) => [id, { daysLate, readyOn: dayNumber(completesOn) }])),
});

/** Whether a plan that was found later may take the place of the one that stands (`mayTakePlace`). */
export const isWorthMoving = (
  { yard }: YardFile,
  standing: PlanFile,
  other: PlanFile,
  given: ReadonlySet<string>,
): boolean => mayTakePlace(judgedPlan(yard, standing), judgedPlan(yard, other), given);
