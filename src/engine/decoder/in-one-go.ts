import type { Minute } from '../../../shared/time.ts';
import { longestPackingIn } from '../calendar/longest-packing.ts';
import type { Session } from '../calendar/sessions.ts';
import { NEVER, type Shifts } from './problem.ts';
import { LEAST_SPELL } from './spells.ts';

/** A packing waits so long for a session that has time for all of it, in minutes (R11). */
const SOON = 14 * 24 * 60;

/**
 * The longest packing that some session has time for in the two weeks from a minute on: a longer one may be begun then and go
 * on in other sessions.
 */
export const longestSoon = (sessions: readonly Session[], from: Minute): number =>
  longestPackingIn(sessions, from, from + SOON);

/** The longest stretch for packing of each session, as far as it is still to come. */
const longestOfEach = (sessions: readonly Session[], now: Minute): number[] =>
  sessions.map((session) => longestPackingIn([session], now, session.end));

/**
 * By shift: packings up to that long wait for a session in which they are done in one go, for there is one soon; longer ones
 * may be begun in the shift. Where the two weeks reach beyond the plan, all of it counts: what comes after it is not known.
 * NEVER where hardly anything is ever packed.
 */
export const inOneGoFrom = (
  sessions: readonly Session[],
  shifts: Shifts,
  { now, horizonEnd }: { now: Minute; horizonEnd: Minute },
): Int32Array => {
  const longest = longestOfEach(sessions, now);
  const inAll = longest.reduce((most, minutes) => Math.max(most, minutes), 0);
  let first = 0;
  return Int32Array.from({ length: shifts.count }, (_, s) => {
    const [from, until] = [shifts.from[s]!, shifts.to[s]! + SOON];
    if (inAll < LEAST_SPELL) return NEVER;
    if (until > horizonEnd) return inAll;
    while (sessions[first]!.end <= from) first++;
    let most = 0;
    for (let i = first; i < sessions.length && sessions[i]!.start < until; i++) most = Math.max(most, longest[i]!);
    return most;
  });
};
