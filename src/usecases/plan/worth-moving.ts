import type { PlanFile, Score } from '../../../shared/plan.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { WORTH_TELLING } from '../../engine/standing/standing-plan.ts';

const EPSILON = 1e-9;

/** Batches, bags and days till all is ready, in weighted days. */
const costOf = ({ batchWorthDays, bagWorthDays }: YardFile['yard'], score: Score): number =>
  batchWorthDays * score.batches + bagWorthDays * score.bags + score.weightedCompletionDays;

/** No order falls out of the plan, and no given date is later in it. */
const holdsDates = (standing: PlanFile, other: PlanFile, given: ReadonlySet<string>): boolean => {
  const others = new Map(other.orders.map((order) => [order.id, order]));
  return standing.orders.every(({ id, daysLate }) => {
    const order = others.get(id);
    return order !== undefined && (!given.has(id) || order.daysLate <= daysLate);
  });
};

const movesLater = (standing: PlanFile, other: PlanFile): boolean => {
  const days = new Map(standing.orders.map(({ id, completesOn }) => [id, completesOn]));
  return other.orders.some(({ id, completesOn }) => completesOn > (days.get(id) ?? completesOn));
};

/**
 * Whether a plan that was found later may take the place of the one that stands: no order falls out, no given date is later
 * in it, and it is less late; or it is as late, moves no planned day later, and is less after dates wanted or saves enough to
 * be worth telling of.
 */
export const isWorthMoving = (
  { yard }: YardFile,
  standing: PlanFile,
  other: PlanFile,
  given: ReadonlySet<string>,
): boolean => {
  if (!holdsDates(standing, other, given)) return false;
  const [was, is] = [standing.score, other.score];
  const unplanned = was.unplannedWeight - is.unplannedWeight;
  if (Math.abs(unplanned) > EPSILON) return unplanned > 0;
  const late = was.weightedDaysLate - is.weightedDaysLate;
  if (Math.abs(late) > EPSILON) return late > 0;
  if (movesLater(standing, other)) return false;
  const afterWanted = was.weightedDaysAfterWanted - is.weightedDaysAfterWanted;
  if (Math.abs(afterWanted) > EPSILON) return afterWanted > 0;
  return costOf(yard, was) - costOf(yard, is) >= WORTH_TELLING;
};
