import { NEVER, type Problem } from '../decoder/problem.ts';

/** Days over which the pace of the yard is measured. */
const LOOK_AHEAD_DAYS = 90;

/** Turns a mould makes in an average day, by mix: one in each session, more where the mix can be stripped within it. */
const turnsPerDay = (problem: Problem): number[] => {
  const { shifts, today, mixes } = problem;
  const days = Math.min(LOOK_AHEAD_DAYS, problem.yard.yard.horizonDays + 1);
  return mixes.map((mix) => {
    let turns = 0;
    for (let s = 0; s < shifts.count && shifts.day[s]! < today + days; s++) {
      const open = shifts.to[s]! - shifts.from[s]!;
      const out = mix.ageing.whenAged(shifts.from[s]!, mix.demouldMinutes) - shifts.from[s]!;
      turns += 1 + Math.floor(Math.max(0, open - mix.attendMinutes) / Math.max(1, out + 2 * mix.mixMinutes));
    }
    return Math.max(turns / days, 1e-6);
  });
};

/**
 * Days of work in each order, by its scarcest moulds: pieces of a casting over the turns a day of all moulds that make
 * it. A rough figure, for sorting only.
 *
 * Example: four pieces from one mould that makes half a turn a day are 8 days.
 */
export const workDays = (problem: Problem): Float64Array => {
  const turns = turnsPerDay(problem);
  return Float64Array.from(problem.orders, (order) =>
    order.pieces.reduce((days, { casting, count }) => {
      const { moulds, mix } = problem.castings[casting]!;
      return Math.max(days, count / (Math.max(1, moulds.length) * turns[mix]!));
    }, 0),
  );
};

const sorted = (problem: Problem, key: (order: number) => number): Int32Array => {
  const keys = problem.orders.map((_, o) => key(o));
  return Int32Array.from(keys.map((_, o) => o).sort((a, b) => keys[a]! - keys[b]! || a - b));
};

/**
 * Earliest due date first (Jackson 1955), the date given or else the one asked for; orders without either last, heavier
 * ones first among equals.
 *
 * Example: due on 24 April, 8 May, 21 April, 15 May and never: `Array.from(earliestDueFirst(compile(yard)))` is [2, 0,
 * 1, 3, 4].
 */
export const earliestDueFirst = (problem: Problem): Int32Array =>
  sorted(problem, (o) => {
    const { aimDay, weight } = problem.orders[o]!;
    return (aimDay >= NEVER ? 1e7 : aimDay) - weight * 1e-6;
  });

/** Orders with a date given first, by that; then those with a date that is only asked for; then the others. */
export const givenFirst = (problem: Problem): Int32Array =>
  sorted(problem, (o) => {
    const { dueDay, aimDay, weight } = problem.orders[o]!;
    if (aimDay >= NEVER) return 1e7 - weight * 1e-6;
    return aimDay + (dueDay >= NEVER ? 1e6 : 0) - weight * 1e-6;
  });

/** By the date asked for, or else the one given: where all that was given holds, what was asked for counts. */
export const earliestWantedFirst = (problem: Problem): Int32Array =>
  sorted(problem, (o) => {
    const { dueDay, wantedDay, weight } = problem.orders[o]!;
    return Math.min(wantedDay, dueDay, 1e7) - weight * 1e-6;
  });

/**
 * Weighted shortest processing time first (Smith 1956): weight over days of work, largest first.
 *
 * Example: of equal weights, a day's work goes before two days'; of weight 3, two days' work goes before one of weight
 * 1.
 */
export const weightedShortestFirst = (problem: Problem, work: Float64Array): Int32Array =>
  sorted(problem, (o) => -problem.orders[o]!.weight / Math.max(work[o]!, 1e-3));

/** Less than this share of what would be as good is worse, however sums are rounded. */
const SURELY = 1 - 1e-9;

/**
 * Apparent tardiness cost (Vepsalainen and Morton 1987), order by order: weight over work, discounted by how much time
 * there is to spare against `lookAhead` mean works. Once nothing is to spare it is weighted shortest work first.
 */
export const apparentTardinessFirst = (problem: Problem, work: Float64Array, lookAhead: number): Int32Array => {
  const ratio = work.map((days, o) => problem.orders[o]!.weight / Math.max(days, 1e-3));
  const left = [...problem.orders.keys()].sort((a, b) => ratio[b]! - ratio[a]! || a - b);
  const latest = problem.orders.map(({ aimDay }, o) =>
    aimDay >= NEVER ? Number.POSITIVE_INFINITY : aimDay - problem.today - work[o]!,
  );
  const result: number[] = [];
  let time = 0;
  let total = work.reduce((sum, x) => sum + x, 0);
  while (left.length > 0) {
    const reach = lookAhead * Math.max(total / left.length, 1e-6);
    let best = -1;
    let bestIndex = -1;
    for (let i = 0; i < left.length; i++) {
      const o = left[i]!;
      // No discount makes it more than its ratio, and those after it have less.
      if (ratio[o]! < bestIndex * SURELY) break;
      const spare = latest[o] === Number.POSITIVE_INFINITY ? 1e4 : Math.max(0, latest[o]! - time);
      // The discount is less than 1 / (1 + spare / reach): most are out of it without working it out.
      if (ratio[o]! < bestIndex * (1 + spare / reach) * SURELY) continue;
      const index = ratio[o]! * Math.exp(-spare / reach);
      const isFirst = index === bestIndex && o < left[best]!;
      if (index > bestIndex || isFirst) [best, bestIndex] = [i, index];
    }
    const order = left.splice(best, 1)[0]!;
    result.push(order);
    time += work[order]!;
    total -= work[order]!;
  }
  return Int32Array.from(result);
};
