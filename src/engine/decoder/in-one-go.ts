import type { Minute } from '../../../shared/time.ts';
import { longestPackingIn } from '../calendar/longest-packing.ts';
import type { Session } from '../calendar/sessions.ts';
import { NEVER, type PackingHours, type Shifts } from './problem.ts';
import { LEAST_SPELL } from './spells.ts';

/** A packing waits for no session that begins so long after the one in which it could be begun, in minutes (R11). */
const SOON = 14 * 24 * 60;

/** The session that begins last by a minute; the first one before any has begun. */
export const sessionAt = ({ starts }: Pick<PackingHours, 'starts'>, minute: Minute): number => {
  let [low, high] = [0, starts.length - 1];
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (starts[middle]! <= minute) low = middle;
    else high = middle - 1;
  }
  return low;
};

interface When {
  now: Minute;
  today: number;
  horizonEnd: Minute;
  /** The hand-over day of each day from today on. */
  handover: Int32Array;
}

/** How sessions lend themselves to packing. */
export const packingHours = (
  sessions: readonly Session[],
  shifts: Shifts,
  { now, today, horizonEnd, handover }: When,
): PackingHours => {
  const starts = Float64Array.from(sessions, ({ start }) => start);
  const longest = Int32Array.from(sessions, (session) => longestPackingIn([session], now, session.end));
  return {
    starts,
    longest,
    handover: Int32Array.from(sessions, ({ day }) => handover[Math.max(0, day - today)]!),
    ofShift: Int32Array.from({ length: shifts.count }, (_, s) => sessionAt({ starts }, shifts.from[s]!)),
    least: longest.reduce((least, minutes) => Math.min(least, minutes), NEVER),
    most: longest.reduce((most, minutes) => Math.max(most, minutes), 0),
    horizonEnd,
  };
};

/**
 * Whether a packing that could be begun in a session is done in one go, in it or in one that is waited for (R11): there is a
 * session long enough soon, and spells would not come to an end on an earlier hand-over day. Where the two weeks reach beyond
 * the plan all sessions count, for what comes after it is not known.
 *
 * Example: 200 minutes wait for a session of 240 on Saturday, and not where Thursday and Friday have 120 each and what is
 * packed is handed over on any day.
 */
export const goesInOneGo = (hours: PackingHours, session: number, minutes: number): boolean => {
  const { starts, longest, handover, most, horizonEnd } = hours;
  if (most < LEAST_SPELL) return true;
  const until = starts[session]! + SOON;
  let [inSpells, spellsOn] = [0, NEVER];
  for (let i = session; i < starts.length && starts[i]! < until; i++) {
    if (longest[i]! >= minutes) return handover[i]! <= spellsOn;
    inSpells += longest[i]!;
    if (inSpells >= minutes) spellsOn = Math.min(spellsOn, handover[i]!);
  }
  return spellsOn === NEVER && until > horizonEnd && minutes <= most;
};

/** Whether there is a session in which a packing may be begun in spells. */
export const isEverInSpells = (hours: PackingHours, minutes: number): boolean =>
  minutes > hours.least && hours.longest.some((_, session) => !goesInOneGo(hours, session, minutes));
