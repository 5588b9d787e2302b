import type { Placing } from '../place/placing.ts';
import { NEVER, NONE, type Problem } from '../place/problem.ts';
import { insertMove } from './moves/insert.ts';
import { below, type Random } from './random.ts';

/**
 * A rough model of the yard, read off a plan: by casting, the hand-over day that each piece is good for, in order. An
 * order is complete when its last piece is, counting through the sequence. Exact where orders share nothing but one
 * casting's turns; elsewhere good enough to rank sequences, at a thousandth of the price of a plan.
 */
export interface CoarseModel {
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

const readyMinutes = (at: Placing): number[][] => {
  const { problem, placed } = at;
  const ready: number[][] = problem.castings.map(() => []);
  for (const lot of problem.finished) for (let i = 0; i < lot.count; i++) ready[lot.casting]!.push(lot.readyAt);
  for (const piece of problem.inMould)
    if (placed.firstStripStart[piece.mould] !== NONE) ready[piece.casting]!.push(placed.firstReadyAt[piece.mould]!);
  for (let p = 0; p < placed.pours; p++)
    if (placed.pourStripStart[p] !== NONE) ready[placed.pourCasting[p]!]!.push(placed.pourReadyAt[p]!);
  for (const list of ready) list.sort((a, b) => a - b);
  return ready;
};

/** Reads the model off the plan in `at`. */
export const coarseModelOf = (at: Placing): CoarseModel => {
  const { problem, orders } = at;
  const readyDay = readyMinutes(at).map((list) => Int32Array.from(list, (minute) => dayFor(problem, minute)));
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

/** Weighted days late, and as far behind it that it only breaks ties, weighted days to hand-over, of a sequence. */
export const coarseCost = (model: CoarseModel, sequence: Int32Array): number => {
  const { problem, readyDay, pieces, taken } = model;
  taken.fill(0);
  let late = 0;
  let days = 0;
  for (let i = 0; i < sequence.length; i++) {
    const o = sequence[i]!;
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
    const { weight, dueDay } = problem.orders[o]!;
    on += model.extraDays[o]!;
    if (dueDay < NEVER && on > dueDay) late += weight * (on - dueDay);
    days += weight * (on - problem.today);
  }
  return late + days * 1e-5;
};

/** Descends by the best insertion or swap of each place until nothing gets better or the evaluations run out. */
const descend = (
  model: CoarseModel,
  start: Int32Array,
  budget: { left: number },
): { sequence: Int32Array; cost: number } => {
  let sequence = start;
  let cost = coarseCost(model, sequence);
  for (let improved = true; improved && budget.left > 0; ) {
    improved = false;
    for (let from = 0; from < sequence.length && budget.left > 0; from++) {
      const better = bestMoveFrom(model, sequence, from, cost, budget);
      if (!better) continue;
      [sequence, cost, improved] = [better.sequence, better.cost, true];
    }
  }
  return { sequence, cost };
};

const bestMoveFrom = (
  model: CoarseModel,
  sequence: Int32Array,
  from: number,
  cost: number,
  budget: { left: number },
) => {
  let best: { sequence: Int32Array; cost: number } | null = null;
  const trial = sequence.slice();
  const judge = () => {
    budget.left--;
    const trialCost = coarseCost(model, trial);
    if (trialCost < (best?.cost ?? cost) - 1e-9) best = { sequence: trial.slice(), cost: trialCost };
  };
  for (let to = from + 1; to < sequence.length; to++) {
    [trial[from], trial[to]] = [trial[to]!, trial[from]!];
    judge();
    [trial[from], trial[to]] = [trial[to]!, trial[from]!];
  }
  // Insertions, one neighbour at a time: first towards the end, then back towards the start.
  for (let to = from + 1; to < sequence.length; to++) {
    [trial[to - 1], trial[to]] = [trial[to]!, trial[to - 1]!];
    judge();
  }
  trial.set(sequence);
  for (let to = from - 1; to >= 0; to--) {
    [trial[to + 1], trial[to]] = [trial[to]!, trial[to + 1]!];
    judge();
  }
  return best as { sequence: Int32Array; cost: number } | null;
};

/**
 * Iterated descent over sequences by the rough model: each round a few orders are moved at random and it descends again
 * (perturbation), keeping what is no worse. Returns the best sequence found; `evaluations` of the rough model at most.
 */
export const coarseSearch = (model: CoarseModel, start: Int32Array, random: Random, evaluations: number) => {
  const budget = { left: evaluations };
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
