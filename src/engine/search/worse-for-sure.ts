import type { DayNumber } from '../../../shared/time.ts';
import { curedAt, outAt } from '../book/curing-times.ts';
import { bagsOf, type DecoderState } from '../decoder/decoder-state.ts';
import { BATCH, type CompiledMix, NONE, type Problem } from '../decoder/problem.ts';
import type { Evaluation } from './evaluation.ts';

const EPSILON = 1e-9;
/** Costs are sums of many terms, added in another order here. */
const COST_ROUNDING = 1e-6;

/** What moulds can do at the most for one mix, shift by shift. */
interface Turns {
  /** Pours of one mould in all shifts before each. */
  before: Int32Array;
  /** Hand-over day, at the soonest, of a piece that is poured in each. */
  readyOn: Int32Array;
}

const allowsBatch = ({ offset, allow }: Problem['shifts'], shift: number): boolean => {
  for (let i = offset[shift]!; i < offset[shift + 1]!; i++) if (allow[i]! & BATCH) return true;
  return false;
};

/** The hand-over day of what is complete at a minute, the last of the horizon at most. */
const handoverBy = ({ handover, calendar, today }: Problem, minute: number): DayNumber =>
  handover[Math.min(calendar.dayOf(minute) - today, handover.length - 1)]!;

/** Pours of one mix in one mould in a shift at the most, each stripped as soon as it may be. */
const turnsIn = ({ shifts }: Problem, mix: CompiledMix, shift: number): number => {
  if (!allowsBatch(shifts, shift)) return 0;
  let turns = 0;
  for (let filled = shifts.from[shift]! + mix.mixMinutes; filled <= shifts.to[shift]!; filled = outAt(mix, filled) + 1)
    turns++;
  return turns;
};

const turnsOf = (problem: Problem, mix: CompiledMix): Turns => {
  const { count, from } = problem.shifts;
  const before = new Int32Array(count + 1);
  const readyOn = new Int32Array(count);
  for (let s = 0; s < count; s++) {
    before[s + 1] = before[s]! + turnsIn(problem, mix, s);
    readyOn[s] = handoverBy(problem, curedAt(mix, from[s]! + mix.mixMinutes));
  }
  return { before, readyOn };
};

/** A minute before which no order is complete that is open at the start of a shift: finished pieces may be dealt late, from when they are ready. */
const soonestOpen = ({ problem, demand }: DecoderState, shift: number): number => {
  let soonest = problem.shifts.from[shift]!;
  for (const lot of problem.there.lateLots)
    if (demand.lotsLeft[lot]! > 0) soonest = Math.min(soonest, problem.finished[lot]!.readyAt);
  return Math.max(soonest, problem.now);
};

/** Finished pieces of a casting that may still stand in for new ones. */
const standIns = ({ problem, demand }: DecoderState, casting: number): number => {
  let pieces = 0;
  for (const lot of problem.there.lateLots)
    if (problem.finished[lot]!.casting === casting) pieces += demand.lotsLeft[lot]!;
  return pieces;
};

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
  private readonly turns: Turns[];
  /** By order: hand-over day of the last of its pieces that are still to be poured, at the soonest. */
  private readonly pouredOn: Int32Array;
  /** Pieces are poured in the order of the queues: nobody is held back. */
  private readonly isInTurn: boolean;

  constructor(private readonly state: DecoderState) {
    const { problem } = state;
    this.turns = problem.mixes.map((mix) => turnsOf(problem, mix));
    this.pouredOn = new Int32Array(problem.orders.length);
    this.isInTurn = problem.holds.length === 0 && !problem.isAnyFrom;
  }

  /** Fills `pouredOn`; false where the horizon has too few turns for some piece. */
  private pourInTurn(shift: number): boolean {
    const { pouredOn, state } = this;
    const { problem, demand } = state;
    pouredOn.fill(0);
    for (let c = 0; c < problem.castings.length; c++) {
      const { moulds, mix } = problem.castings[c]!;
      if (demand.need[c] === 0 || moulds.length === 0) continue;
      const { before, readyOn } = this.turns[mix]!;
      const thereOf = standIns(state, c);
      let [pieces, s] = [-thereOf, shift];
      for (let i = demand.head[c]!; i < demand.end[c]!; i++) {
        if (demand.left[i] === 0) continue;
        if (!this.isInTurn) [pieces, s] = [-thereOf, shift];
        pieces += demand.left[i]!;
        if (pieces <= 0) continue;
        while (s < readyOn.length && (before[s + 1]! - before[shift]!) * moulds.length < pieces) s++;
        if (s === readyOn.length) return false;
        pouredOn[demand.order[i]!] = Math.max(pouredOn[demand.order[i]!]!, readyOn[s]!);
      }
    }
    return true;
  }

  /** The hand-over day of an order at the soonest. */
  private soonestOn(order: number, openOn: DayNumber): DayNumber {
    const { problem, orders } = this.state;
    const completesAt = orders.completesAt[order]!;
    if (completesAt !== NONE) return handoverBy(problem, completesAt);
    return Math.max(openOn, this.pouredOn[order]!, handoverBy(problem, orders.readyAt[order]!));
  }

  /**
   * True when the plan in the decoder, made up to a shift, with no order left out but those that are now, ends worse than the
   * best one, or not at all: every open order is complete as soon as the hours and its moulds allow, every batch to come full.
   */
  isWorse(shift: number, best: Evaluation): boolean {
    const { problem, orders, placed } = this.state;
    if (!this.pourInTurn(shift)) return true;
    const openOn = handoverBy(problem, soonestOpen(this.state, shift));
    let [late, afterWanted] = [0, 0];
    let cost = problem.batchWorthDays * placed.batches + problem.bagWorthDays * bagsOf(placed);
    for (let o = 0; o < problem.orders.length; o++) {
      if (orders.excluded[o]) continue;
      const { weight, dueDay, wantedDay } = problem.orders[o]!;
      const on = this.soonestOn(o, openOn);
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
