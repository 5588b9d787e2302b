import { BATCH, NEVER, NONE, type Problem } from '../decoder/problem.ts';

const allowsBatch = (problem: Problem, shift: number): boolean => {
  const { offset, allow } = problem.shifts;
  for (let i = offset[shift]!; i < offset[shift + 1]!; i++) if (allow[i]! & BATCH) return true;
  return false;
};

/**
 * The first hand-over day on or after the local date of a minute (R11). The minute lies within the horizon.
 *
 * Example: handed over on Saturdays and Tuesdays, on a Wednesday: `dateOfDay(handoverOn(compile(yard),
 * minuteOf('2027-04-07T18:30:00+01:00')))` is "2027-04-10".
 */
export const handoverOn = (problem: Problem, minute: number): number =>
  problem.handover[problem.calendar.dayOf(minute) - problem.today]!;

/**
 * The last minute at which an order may be complete for so many more sessions that allow batches, all that the yard keeps in
 * hand where nothing is said, to lie between it and the day it was given: what `promiseDay` counts forward, counted back.
 * NEVER for no session, NONE where too few are left.
 *
 * Example: given for Sat 17 April, worked and handed over on Saturdays, one session in hand: the minute at which that
 * Saturday's session begins.
 */
export const completeInHand = (
  problem: Problem,
  given: number,
  sessions = problem.yard.yard.sessionsInHand,
): number => {
  let left = sessions;
  if (left === 0) return NEVER;
  const { count, from, sessionEnd } = problem.shifts;
  for (let s = count - 1; s >= 0; s--) {
    if (!allowsBatch(problem, s)) continue;
    if (handoverOn(problem, Math.min(sessionEnd[s]!, problem.horizonEnd - 1)) > given) continue;
    if (--left === 0) return from[s]!;
  }
  return NONE;
};

/**
 * The day to promise: the first hand-over day once `sessionsInHand` more sessions that allow batches have passed since
 * `earliestAt`. A session counts when it starts at or after that minute. Null when the horizon has not that many left.
 *
 * Example: earliest on a Saturday, one session in hand, the next one Wed 18:00 to 20:30, hand-over on Saturdays and
 * Tuesdays: `dateOfDay(promiseDay(compile(yard), minuteOf('2027-04-10T13:15:00+01:00')))` is "2027-04-17".
 */
export const promiseDay = (problem: Problem, earliestAt: number): number | null => {
  let left = problem.yard.yard.sessionsInHand;
  if (left === 0) return handoverOn(problem, earliestAt);
  for (let s = 0; s < problem.shifts.count; s++) {
    if (problem.shifts.from[s]! < earliestAt || !allowsBatch(problem, s)) continue;
    if (--left === 0) return handoverOn(problem, Math.min(problem.shifts.sessionEnd[s]!, problem.horizonEnd - 1));
  }
  return null;
};
