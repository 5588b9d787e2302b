import { InTurn, standIns } from '../bound/in-turn.ts';
import { bagsOf, type DecoderState } from '../decoder/decoder-state.ts';
import type { Evaluation } from './evaluation.ts';

const EPSILON = 1e-9;
/** Costs are sums of many terms, added in another order here. */
const COST_ROUNDING = 1e-6;

/** What batches for the pieces that are still to be poured cost at the least, all of them full. */
const leastBatchCost = (state: DecoderState): number => {
  const { problem, demand } = state;
  let cost = 0;
  for (let c = 0; c < problem.castings.length; c++) {
    const pieces = demand.need[c]! - standIns(state, c);
    if (pieces <= 0) continue;
    const { mix, kg } = problem.castings[c]!;
    const { mostKg, yieldKgPerBag } = problem.mixes[mix]!;
    cost += pieces * kg * (problem.batchWorthDays / mostKg + problem.bagWorthDays / yieldKgPerBag);
  }
  return cost;
};

/** Tells of a plan made as far as a shift whether it is worse than another, whatever comes after. */
export class WorseForSure {
  private readonly inTurn: InTurn;

  constructor(private readonly state: DecoderState) {
    this.inTurn = new InTurn(state);
  }

  /**
   * True when the plan in the decoder, made up to a shift, with no order left out but those that are now, ends worse than the
   * best one, or not at all: every open order is complete as soon as the hours and its moulds allow, every batch to come full.
   */
  isWorse(shift: number, best: Evaluation): boolean {
    const { problem, orders, placed } = this.state;
    if (!this.inTurn.look(shift)) return true;
    let [late, afterWanted] = [0, 0];
    let cost = problem.batchWorthDays * placed.batches + problem.bagWorthDays * bagsOf(placed);
    for (let o = 0; o < problem.orders.length; o++) {
      if (orders.excluded[o]) continue;
      const { weight, dueDay, wantedDay } = problem.orders[o]!;
      const day = problem.calendar.dayOf(Math.min(this.inTurn.soonest(o), problem.horizonEnd - 1));
      const on = problem.handover[day - problem.today]!;
      if (on > dueDay) late += weight * (on - dueDay);
      if (on > wantedDay) afterWanted += weight * (on - wantedDay);
      cost += weight * (on - problem.today);
    }
    if (Math.abs(late - best.weightedDaysLate) > EPSILON) return late > best.weightedDaysLate;
    if (Math.abs(afterWanted - best.weightedDaysAfterWanted) > EPSILON)
      return afterWanted > best.weightedDaysAfterWanted;
    return cost + leastBatchCost(this.state) > best.cost + COST_ROUNDING;
  }
}
