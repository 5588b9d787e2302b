import type { DecoderState } from '../decoder/decoder-state.ts';
import { NEVER, NONE, type Problem } from '../decoder/problem.ts';
import { insertMove } from './moves/insert.ts';
import { below, type Random } from './random.ts';

/**
 * A rough model of the yard that stands in for planning, read off a plan: by casting, the hand-over day that each piece
 * is good for, in order. An order is complete when its last piece is, counting through the sequence. Exact where orders
 * share nothing but one casting's turns; elsewhere good enough to rank sequences, at a thousandth of the price of a plan.
 */
export interface Surrogate {
  problem: Problem;
  /** By casting. */
  readyDay: Int32Array[];
  /** Days from the last piece of an order to its hand-over in the plan the model was read off, by order. */
  extraDays: Int32Array;
  /** Pieces by order: casting and count in turn. */
  pieces: Int32Array[];
  taken: Int32Array;
}

const dayFor = (problem: Problem, minute: number): number =>
  problem.handover[Math.min(problem.handover.length - 1, problem.calendar.dayOf(minute) - problem.today)]!;

const readyMinutes = (state: DecoderState): number[][] => {
  const { problem, placed } = state;
  const ready: number[][] = problem.castings.map(() => []);
  for (const lot of problem.finished) for (let i = 0; i < lot.count; i++) ready[lot.casting]!.push(lot.readyAt);
  for (const piece of problem.inMould)
    if (placed.firstStripStart[piece.mould] !== NONE) ready[piece.casting]!.push(placed.firstReadyAt[piece.mould]!);
  for (let p = 0; p < placed.pours; p++)
    if (placed.pourStripStart[p] !== NONE) ready[placed.pourCasting[p]!]!.push(placed.pourReadyAt[p]!);
  for (const list of ready) list.sort((a, b) => a - b);
  return ready;
};

/** Reads a surrogate off the plan in `state`. */
export const surrogateOf = (state: DecoderState): Surrogate => {
  const { problem, orders } = state;
  const readyDay = readyMinutes(state).map((list) => Int32Array.from(list, (minute) => dayFor(problem, minute)));
  const extraDays = Int32Array.from(problem.orders, (_, o) => {
    const completesAt = orders.completesAt[o]!;
    if (completesAt === NONE) return 0;
    return Math.max(0, dayFor(problem, completesAt) - dayFor(problem, orders.readyAt[o]!));
  });
  return {
    problem,
    readyDay,
    extraDays,
    pieces: problem.orders.map((o) => Int32Array.from(o.pieces.flatMap((x) => [x.casting, x.count]))),
    taken: new Int32Array(problem.castings.length),
  };
};

/** A day to hand-over against a day late: so little that it only breaks ties. */
const DAY_WORTH = 1e-5;
/** A day after the date wanted against a day late: between the two. */
const WANTED_WORTH = 1e-2;

const daysAfter = (on: number, day: number): number => (day < NEVER && on > day ? on - day : 0);

/**
 * Days late and, far behind them, days after the date wanted and days to hand-over of one order whose castings have been
 * taken up to `taken`, weighted.
 */
const orderCost = (model: Surrogate, o: number, taken: Int32Array): number => {
  const { problem, readyDay, pieces } = model;
  const needed = pieces[o]!;
  let on = problem.today;
  for (let k = 0; k < needed.length; k += 2) {
    const c = needed[k]!;
    const upTo = taken[c]! + needed[k + 1]!;
    taken[c] = upTo;
    const list = readyDay[c]!;
    const day = list.length === 0 ? problem.today : list[Math.min(upTo, list.length) - 1]!;
    if (day > on) on = day;
  }
  const { weight, dueDay, wantedDay } = problem.orders[o]!;
  on += model.extraDays[o]!;
  const late = daysAfter(on, dueDay) + daysAfter(on, wantedDay) * WANTED_WORTH;
  return weight * (late + (on - problem.today) * DAY_WORTH);
};

/** Weighted days late of a sequence, and far behind them those after dates wanted and those to hand-over, to break ties. */
export const surrogateCost = (model: Surrogate, sequence: Int32Array): number => {
  model.taken.fill(0);
  let cost = 0;
  for (let i = 0; i < sequence.length; i++) cost += orderCost(model, sequence[i]!, model.taken);
  return cost;
};

/**
 * A sequence with what its beginnings come to, so that a move is judged by the stretch that it touches: pieces taken
 * before each place, a row of castings a place, and the cost before each place.
 */
interface Walk {
  sequence: Int32Array;
  takenBefore: Int32Array;
  costBefore: Float64Array;
}

const walkOf = (model: Surrogate, sequence: Int32Array): Walk => {
  const castings = model.taken.length;
  const takenBefore = new Int32Array((sequence.length + 1) * castings);
  const costBefore = new Float64Array(sequence.length + 1);
  model.taken.fill(0);
  for (let i = 0; i < sequence.length; i++) {
    takenBefore.set(model.taken, i * castings);
    costBefore[i + 1] = costBefore[i]! + orderCost(model, sequence[i]!, model.taken);
  }
  return { sequence, takenBefore, costBefore };
};

/** What a trial costs less than the walk's sequence, when it differs from it between two places only. */
const gainOf = (model: Surrogate, walk: Walk, trial: Int32Array, first: number, last: number): number => {
  const castings = model.taken.length;
  model.taken.set(walk.takenBefore.subarray(first * castings, (first + 1) * castings));
  const present = walk.costBefore[last + 1]! - walk.costBefore[first]!;
  let cost = 0;
  for (let i = first; i <= last; i++) cost += orderCost(model, trial[i]!, model.taken);
  return present - cost;
};

interface Budget {
  /** Orders that may still be costed. */
  left: number;
}

/** Descends by the best insertion or swap of each place until nothing gets better or the evaluations run out. */
const descend = (model: Surrogate, start: Int32Array, budget: Budget): { sequence: Int32Array; cost: number } => {
  let walk = walkOf(model, start);
  for (let improved = true; improved && budget.left > 0; ) {
    improved = false;
    for (let from = 0; from < start.length && budget.left > 0; from++) {
      const better = bestMoveFrom(model, walk, from, budget);
      if (!better) continue;
      walk = walkOf(model, better);
      improved = true;
    }
  }
  return { sequence: walk.sequence, cost: walk.costBefore[start.length]! };
};

const bestMoveFrom = (model: Surrogate, walk: Walk, from: number, budget: Budget): Int32Array | null => {
  const { sequence } = walk;
  const trial = sequence.slice();
  let best: Int32Array | null = null;
  let bestGain = 1e-9;
  const judge = (to: number) => {
    const [first, last] = from < to ? [from, to] : [to, from];
    budget.left -= last - first + 1;
    const gain = gainOf(model, walk, trial, first, last);
    if (gain > bestGain) [best, bestGain] = [trial.slice(), gain];
  };
  for (let to = from + 1; to < sequence.length; to++) {
    [trial[from], trial[to]] = [trial[to]!, trial[from]!];
    judge(to);
    [trial[from], trial[to]] = [trial[to]!, trial[from]!];
  }
  // Insertions, one neighbour at a time: first towards the end, then back towards the start.
  for (let to = from + 1; to < sequence.length; to++) {
    [trial[to - 1], trial[to]] = [trial[to]!, trial[to - 1]!];
    judge(to);
  }
  trial.set(sequence);
  for (let to = from - 1; to >= 0; to--) {
    [trial[to + 1], trial[to]] = [trial[to]!, trial[to + 1]!];
    judge(to);
  }
  return best;
};

/**
 * Iterated descent over sequences by the surrogate: each round a few orders are moved at random and it descends again
 * (perturbation), keeping what is no worse. Returns the best sequence found; `evaluations` of the surrogate at most.
 */
export const searchSurrogate = (model: Surrogate, start: Int32Array, random: Random, evaluations: number) => {
  const budget = { left: evaluations * start.length };
  let present = descend(model, start, budget);
  let best = present;
  while (budget.left > 0 && best.sequence.length > 2) {
    let shaken = present.sequence;
    for (let i = 0, moves = 2 + below(random, 4); i < moves; i++)
      shaken = insertMove(shaken, below(random, shaken.length), below(random, shaken.length));
    const found = descend(model, shaken, budget);
    if (found.cost <= present.cost + 1e-9) present = found;
    else if (random() < 0.02) present = best;
    if (found.cost < best.cost - 1e-9) best = found;
  }
  return best;
};
