import type { PlanFile } from '../../../shared/plan.ts';
import { NONE } from '../decoder/problem.ts';
import { isBetter } from '../search/evaluation.ts';
import { type Candidate, harmOf, mayReplace } from './standing-plan.ts';

/** What plans are chosen by: whose dates were given, the plan that holds now, and how much of what is fixed one has not. */
export interface Beside {
  given: ReadonlySet<string>;
  near: PlanFile | undefined;
  lost: (one: Candidate) => number;
}

/**
 * Whether nobody who stands falls out of a plan for the sake of one who did not: one that drops an order has to do less harm
 * to those that were planned before.
 */
const dropsNone = (stood: Candidate, one: Candidate, near: PlanFile, given: ReadonlySet<string>): boolean => {
  if (stood.readyOn.every((day, o) => day === NONE || one.readyOn[o] !== NONE)) return true;
  const known = new Set(near.orders.map(({ id }) => id).filter((id) => given.has(id)));
  return harmOf(one, near, known) < harmOf(stood, near, known);
};

/**
 * Of the plan that stands, carried forward, and others: the one that does the least harm to dates that were given. What is
 * fixed and can stay does stay, but for that. Of those that do as little, the best that may take the place of the plan that
 * stands; or the plan that stands.
 */
export const chooseBeside = (stood: Candidate, all: readonly Candidate[], { given, near, lost }: Beside): Candidate => {
  const harm = (one: Candidate) => (near ? harmOf(one, near, given) : 0);
  const others = all.filter((one) => !near || dropsNone(stood, one, near, given));
  const least = Math.min(harm(stood), ...others.map(harm));
  const harmless = others.filter((one) => harm(one) <= least);
  if (harm(stood) > least) {
    const fewest = Math.min(...harmless.map(lost));
    return harmless
      .filter((one) => lost(one) === fewest)
      .reduce((best, one) => (isBetter(one.evaluation, best.evaluation) ? one : best));
  }
  const whole = harmless.filter((one) => lost(one) <= lost(stood) && !movesNew(stood, one, near));
  return whole.reduce(
    (best, one) => (mayReplace(stood, one, given) && isBetter(one.evaluation, best.evaluation) ? one : best),
    stood,
  );
};

/** Places of the orders that the plan which holds now does not know: they have just been taken. */
const newOrders = ({ problem }: Candidate, near: PlanFile | undefined): number[] => {
  const known = new Set(near?.orders.map(({ id }) => id));
  return near ? problem.yard.orders.flatMap(({ id }, o) => (known.has(id) ? [] : [o])) : [];
};

/** Whether an order just taken is later in another plan, or not in it: its day was told, whether it has a date or not. */
const movesNew = (stood: Candidate, one: Candidate, near: PlanFile | undefined): boolean =>
  newOrders(stood, near).some(
    (o) => stood.readyOn[o] !== NONE && (one.readyOn[o] === NONE || one.readyOn[o]! > stood.readyOn[o]!),
  );

/**
 * What stands once an order is taken: the plan that stands, carried forward; or the one in which the question "when could it
 * be ready?" found a sooner day for it, or one that does less harm. It is no later in all than what holds now. A day that was told is not planned later than it was.
 */
export const onceTaken = (stood: Candidate, answered: Candidate | null, { given, near, lost }: Beside): Candidate => {
  if (!answered || !near) return stood;
  const isSooner = newOrders(stood, near).some((o) => {
    const [is, was] = [answered.readyOn[o]!, stood.readyOn[o]!];
    return is !== NONE && (was === NONE || is < was);
  });
  const isWhole = answered.readyOn.every((day, o) => day !== NONE || stood.readyOn[o] === NONE);
  const [harm, before] = [harmOf(answered, near, given), harmOf(stood, near, given)];
  const noHarm = harm <= before && lost(answered) <= lost(stood);
  const { unplannedWeight, weightedDaysLate } = stood.evaluation;
  const asGood =
    answered.evaluation.unplannedWeight <= unplannedWeight &&
    answered.evaluation.weightedDaysLate <= Math.max(weightedDaysLate, near.score.weightedDaysLate);
  return (isSooner || harm < before) && isWhole && noHarm && asGood ? answered : stood;
};
