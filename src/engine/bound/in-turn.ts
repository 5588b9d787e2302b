import type { Minute } from '../../../shared/time.ts';
import { curedAt, outAt } from '../book/curing-times.ts';
import type { DecoderState } from '../decoder/decoder-state.ts';
import { BATCH, type CompiledMix, NONE, type Problem } from '../decoder/problem.ts';

/** What moulds can do at the most for one mix, shift by shift. */
interface Turns {
  /** Pours of one mould in all shifts before each. */
  before: Int32Array;
  /** When a piece that is poured in each is cured, at the soonest. */
  readyAt: Int32Array;
}

const allowsBatch = ({ offset, allow }: Problem['shifts'], shift: number): boolean => {
  for (let i = offset[shift]!; i < offset[shift + 1]!; i++) if (allow[i]! & BATCH) return true;
  return false;
};

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
  const readyAt = new Int32Array(count);
  for (let s = 0; s < count; s++) {
    before[s + 1] = before[s]! + turnsIn(problem, mix, s);
    readyAt[s] = Math.min(curedAt(mix, from[s]! + mix.mixMinutes), problem.horizonEnd);
  }
  return { before, readyAt };
};

/** A minute before which no order is complete that is open at the start of a shift: finished pieces may be dealt late, from when they are ready. */
const soonestOpen = ({ problem, demand }: DecoderState, shift: number): Minute => {
  let soonest = problem.shifts.from[shift]!;
  for (const lot of problem.there.lateLots)
    if (demand.lotsLeft[lot]! > 0) soonest = Math.min(soonest, problem.finished[lot]!.readyAt);
  return Math.max(soonest, problem.now);
};

/** Finished pieces of a casting that may still stand in for new ones. */
export const standIns = ({ problem, demand }: DecoderState, casting: number): number => {
  let pieces = 0;
  for (const lot of problem.there.lateLots)
    if (problem.finished[lot]!.casting === casting) pieces += demand.lotsLeft[lot]!;
  return pieces;
};

/**
 * When the orders of a plan that is made up to a shift are complete at the soonest, whatever comes after: pieces still to be
 * poured take their turns in the moulds one after another, in the order of the queues, as if nothing else took any time.
 */
export class InTurn {
  private readonly turns: Turns[];
  /** By order: when the last of its pieces that are still to be poured is cured, at the soonest. */
  private readonly pouredAt: Int32Array;
  private open = 0;

  constructor(private readonly state: DecoderState) {
    const { problem } = state;
    this.turns = problem.mixes.map((mix) => turnsOf(problem, mix));
    this.pouredAt = new Int32Array(problem.orders.length);
  }

  /** Looks at the plan at the start of a shift; false where the horizon has too few turns for some piece. */
  look(shift: number): boolean {
    this.pouredAt.fill(0);
    this.open = soonestOpen(this.state, shift);
    for (let c = 0; c < this.state.problem.castings.length; c++) if (!this.pourInTurn(c, shift)) return false;
    return true;
  }

  private pourInTurn(casting: number, shift: number): boolean {
    const { pouredAt, state } = this;
    const { demand, problem } = state;
    const { moulds, mix } = problem.castings[casting]!;
    if (demand.need[casting] === 0 || moulds.length === 0) return true;
    const { before, readyAt } = this.turns[mix]!;
    // Where some are held back, others go before them.
    const isInOrder = state.holds.length === 0 && !problem.isAnyFrom;
    const there = standIns(state, casting);
    let [pieces, s] = [-there, shift];
    for (let i = demand.head[casting]!; i < demand.end[casting]!; i++) {
      if (demand.left[i] === 0) continue;
      if (!isInOrder) [pieces, s] = [-there, shift];
      pieces += demand.left[i]!;
      while (s < readyAt.length && (before[s + 1]! - before[shift]!) * moulds.length < pieces) s++;
      if (s === readyAt.length) return false;
      const order = demand.order[i]!;
      if (pieces > 0) pouredAt[order] = Math.max(pouredAt[order]!, readyAt[s]!);
    }
    return true;
  }

  /** When an order is complete: known, or at the soonest. */
  soonest(order: number): Minute {
    const { completesAt, readyAt } = this.state.orders;
    if (completesAt[order] !== NONE) return completesAt[order]!;
    return Math.max(this.open, this.pouredAt[order]!, readyAt[order]!);
  }
}
