import { NEVER, NONE, type Problem } from '../decoder/problem.ts';
import { type InYard, inYard } from '../exact/in-yard.ts';
import { canSearchAll, isAnythingFixed } from '../exact/scope.ts';
import { searchAll, type Worth } from '../exact/search.ts';
import type { Asking, Present } from './present.ts';
import { handoverOn } from './promise.ts';

/** Steps of one search of everything, about a second at the most. */
const MOST_STEPS = 6_000;

/** The last minute at which an order is handed over by a day. */
export const lastMinuteBy = ({ handover, today, calendar }: Problem, day: number): number => {
  if (day >= NEVER) return NEVER;
  let days = 0;
  while (days < handover.length && handover[days]! <= day) days++;
  return calendar.midnightOf(today + days) - 1;
};

/** The minute of the new order, where every other that is planned is complete by the last minute at which it may be. */
const worthOf = ({ problem, added }: Asking, { daysLate, until, leftOut }: Present): Worth => {
  const last = daysLate.map((late, o) => {
    if (leftOut[o] === 1) return NONE;
    return Math.min(until[o]!, lastMinuteBy(problem, Math.min(NEVER, problem.orders[o]!.dueDay + late)));
  });
  const isKept = (at: number, limit: number) => limit === NONE || (at !== NONE && at <= limit);
  return (completesAt) =>
    completesAt[added] !== NONE && last.every((limit, o) => isKept(completesAt[o]!, limit))
      ? completesAt[added]!
      : Infinity;
};

/** What a search of everything came to: a plan with the new order sooner, where there is one; and whether no other has it sooner still. */
export interface Exactly {
  completesAt: number;
  found: InYard | null;
  isProven: boolean;
}

/** The first minute of the hand-over day of a minute; NEVER where that is never. */
const firstMinuteOf = (problem: Problem, minute: number): number =>
  minute >= NEVER ? NEVER : lastMinuteBy(problem, handoverOn(problem, minute) - 1) + 1;

/**
 * Looks through all ways to have the new order before a minute, no date given later than at present, on yards small enough for
 * that. What is found is tried in the yard, and what comes of it holds. Where something is fixed nothing is looked for but
 * whether there is no way at all to have it on an earlier day.
 */
export const exactlyBefore = (asking: Asking, present: Present, before: number): Exactly => {
  const { problem, added } = asking;
  const made = problem.orders.map((_, o) => o).filter((o) => o === added || present.leftOut[o] !== 1);
  const open: Exactly = { completesAt: before, found: null, isProven: false };
  if (!canSearchAll(problem, made)) return open;
  const worth = worthOf(asking, present);
  const isFixed = isAnythingFixed(problem);
  const below = isFixed ? firstMinuteOf(problem, before) : before;
  const { best, isProven } = searchAll(problem, [added, ...made.filter((o) => o !== added)], worth, below, MOST_STEPS);
  if (!best) return { ...open, isProven };
  const found = isFixed ? null : inYard(problem, best, worth);
  if (found) return { completesAt: best.worth, found, isProven };
  // What came to nothing in the yard is a bound all the same: no plan has the order before it.
  return { ...open, isProven: isProven && firstMinuteOf(problem, best.worth) >= firstMinuteOf(problem, before) };
};

/**
 * The minute at which the new order can be complete, all others left out, where all ways to make it alone have one on an
 * earlier day than that of a minute; that minute otherwise.
 */
export const firstExactly = ({ problem, added }: Asking, before: number): number => {
  if (before >= NEVER || isAnythingFixed(problem) || !canSearchAll(problem, [added])) return before;
  const worth: Worth = (completesAt) => (completesAt[added] === NONE ? Number.POSITIVE_INFINITY : completesAt[added]!);
  const { best } = searchAll(problem, [added], worth, firstMinuteOf(problem, before), MOST_STEPS);
  return best && inYard(problem, best, worth) ? best.worth : before;
};
