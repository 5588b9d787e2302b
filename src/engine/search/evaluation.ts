import { bagsOf, type DecoderState } from '../decoder/decoder-state.ts';
import { NEVER, NONE } from '../decoder/problem.ts';

/** How good a plan is, first number first; less is better (contract, "What makes one plan better than another"). */
export interface Evaluation {
  unplannedWeight: number;
  weightedDaysLate: number;
  weightedDaysAfterWanted: number;
  /** `batchWorthDays` x batches + `bagWorthDays` x bags + weighted completion days. */
  cost: number;
  /**
   * Weighted days that pieces are ready after their order's date, given or else wanted, each piece counting its share of
   * the order, and half of that where the date is only wanted. No part of
   * what makes a plan good: it leads a search on, where an order gets less late piece by piece long before its day moves.
   */
  lateness: number;
}

/** What plans are compared by. */
type Worth = Omit<Evaluation, 'lateness'> & Partial<Pick<Evaluation, 'lateness'>>;

const EPSILON = 1e-9;
/** A piece that is late for a date that is only wanted, against one that is late for a date given. */
const WANTED_SHARE = 0.5;

/**
 * True when the first is better for sure: less than a billionth counts as equal, and lateness does not count
 * (contract, "What makes one plan better than another").
 *
 * Example: a day late outweighs any days after dates wanted, and any cost: `isBetter({ unplannedWeight: 0,
 * weightedDaysLate: 2, weightedDaysAfterWanted: 8, cost: 90 }, { unplannedWeight: 0, weightedDaysLate: 3,
 * weightedDaysAfterWanted: 0, cost: 10 })` is true.
 */
export const isBetter = (a: Worth, b: Worth): boolean => {
  if (Math.abs(a.unplannedWeight - b.unplannedWeight) > EPSILON) return a.unplannedWeight < b.unplannedWeight;
  if (Math.abs(a.weightedDaysLate - b.weightedDaysLate) > EPSILON) return a.weightedDaysLate < b.weightedDaysLate;
  if (Math.abs(a.weightedDaysAfterWanted - b.weightedDaysAfterWanted) > EPSILON)
    return a.weightedDaysAfterWanted < b.weightedDaysAfterWanted;
  return a.cost < b.cost - EPSILON;
};

const latenessOf = (state: DecoderState): number => {
  const { problem, placed } = state;
  let lateness = 0;
  for (let p = 0; p < placed.pours; p++) {
    if (placed.pourOrder[p] === NONE) continue;
    const order = problem.orders[placed.pourOrder[p]!]!;
    if (order.aimDay >= NEVER) continue;
    const days = (placed.pourReadyAt[p]! - problem.aimMinutes[placed.pourOrder[p]!]!) / 1440;
    const share = order.dueDay < NEVER ? 1 : WANTED_SHARE;
    if (days > 0) lateness += (share * order.weight * days) / order.pieceCount;
  }
  return lateness;
};

/**
 * Evaluates the plan that a decode left in `state`.
 *
 * Example: two batches at 5, three bags at 0.5 and one order of weight 1 five days from today cost 16.5.
 */
export const evaluate = (state: DecoderState): Evaluation => {
  const { problem, orders, placed } = state;
  let [unplannedWeight, weightedDaysLate, weightedDaysAfterWanted] = [0, 0, 0];
  let cost = problem.batchWorthDays * placed.batches + problem.bagWorthDays * bagsOf(placed);
  for (let o = 0; o < problem.orders.length; o++) {
    const { weight, dueDay, wantedDay } = problem.orders[o]!;
    const completesAt = orders.completesAt[o]!;
    if (completesAt === NONE) {
      unplannedWeight += weight;
      continue;
    }
    const on = problem.handover[problem.calendar.dayOf(completesAt) - problem.today]!;
    if (on > dueDay) weightedDaysLate += weight * (on - dueDay);
    if (on > wantedDay) weightedDaysAfterWanted += weight * (on - wantedDay);
    cost += weight * (on - problem.today);
  }
  return { unplannedWeight, weightedDaysLate, weightedDaysAfterWanted, cost, lateness: latenessOf(state) };
};
