import { NEVER } from '../decoder/problem.ts';

/** A job of one resource: so many slots, all of them before it is done. */
export interface Job {
  slots: number;
  weight: number;
  dueDay: number;
}

const ROUNDS = 400;
const STEPS_IN_ALL = 20_000_000;

/** Last slot of each day: an order that is late by a day loses nothing by taking that day's last slot. */
const dayEnds = (days: Int32Array): number[] => {
  const ends: number[] = [];
  for (let k = 0; k < days.length; k++) if (k + 1 === days.length || days[k + 1]! > days[k]!) ends.push(k);
  return ends;
};

interface Choice {
  cost: number;
  end: number;
}

/** The cheapest last slot for a job: its days late and the prices of the slots up to there. */
const cheapest = (job: Job, days: Int32Array, ends: number[], sums: Float64Array): Choice => {
  let best: Choice = { cost: Infinity, end: -1 };
  for (const end of ends) {
    if (end + 1 < job.slots) continue;
    const late = job.dueDay >= NEVER ? 0 : Math.max(0, days[end]! - job.dueDay);
    const cost = job.weight * late + sums[end + 1]! - sums[end + 1 - job.slots]!;
    if (cost < best.cost) best = { cost, end };
  }
  return best;
};

/** One round at given prices: the bound they prove, and how many jobs want each slot. */
const judge = (jobs: Job[], days: Int32Array, ends: number[], prices: Float64Array, wanted: Int32Array): number => {
  const sums = new Float64Array(days.length + 1);
  for (let k = 0; k < days.length; k++) sums[k + 1] = sums[k]! + prices[k]!;
  let bound = -sums[days.length]!;
  wanted.fill(0);
  for (const job of jobs) {
    const { cost, end } = cheapest(job, days, ends, sums);
    if (end < 0) return 0;
    bound += cost;
    wanted[end + 1 - job.slots]!++;
    if (end + 1 < days.length) wanted[end + 1]!--;
  }
  for (let k = 1; k < days.length; k++) wanted[k] = wanted[k]! + wanted[k - 1]!;
  return bound;
};

/**
 * A lower bound on the weighted days late of jobs that share one resource, whose k-th slot is good for `days[k]` at
 * the soonest: slots get prices, each job pays for its own and is late as it likes, and the best prices found prove
 * the bound (Lagrangian relaxation of the capacity, with subgradient steps; Fisher 1981, Management Science 27(1),
 * from memory). Jobs may be split, so it holds for plans that interleave orders. Prices never rise with time, so that
 * the cheapest slots before a day are the last ones. `aim` is the cost of some plan; steps are sized by it. 0 where
 * nothing is proven.
 *
 * Example: two jobs of two slots each, one slot a day from day 1, both due on day 2, weights 1 and 3: the bound is 2,
 * the light one two days late.
 */
export const weightedLateBound = (jobs: Job[], days: Int32Array, aim: number): number => {
  if (jobs.length === 0 || days.length === 0 || aim <= 0) return 0;
  const ends = dayEnds(days);
  const rounds = Math.max(10, Math.min(ROUNDS, Math.floor(STEPS_IN_ALL / (jobs.length * ends.length + days.length))));
  const prices = new Float64Array(days.length);
  const wanted = new Int32Array(days.length);
  let [best, scale, idle] = [0, 1, 0];
  for (let round = 0; round < rounds; round++) {
    const bound = judge(jobs, days, ends, prices, wanted);
    if (bound > best + 1e-9) [best, idle] = [bound, 0];
    else if (++idle >= 8) [scale, idle] = [scale / 2, 0];
    let square = 0;
    for (let k = 0; k < days.length; k++) square += (wanted[k]! - 1) ** 2;
    if (square === 0) break;
    const step = (scale * (aim - bound)) / square;
    for (let k = 0; k < days.length; k++) prices[k] = Math.max(0, prices[k]! + step * (wanted[k]! - 1));
    for (let k = days.length - 2; k >= 0; k--) if (prices[k]! < prices[k + 1]!) prices[k] = prices[k + 1]!;
  }
  return best;
};
