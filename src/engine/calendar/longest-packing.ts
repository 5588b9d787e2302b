import { type Minute, minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { calendarOf } from './calendar.ts';
import { type Session, sessionsOf } from './sessions.ts';

/** A session that is longer than this is worked in two (the decoder cuts it at midnight). */
const MOST_AT_A_TIME = 16 * 60;

/** The longest stretch of a session between two minutes in which somebody is there to pack, once what is kept wet is wet. */
const longestIn = ({ wetUntil: from, to, windows }: Session, first: Minute, last: Minute): number => {
  let [longest, stretchFrom, stretchTo] = [0, Number.NaN, Number.NaN];
  for (const { start, end, crew, allows } of windows) {
    if (crew === 0 || !allows.includes('pack')) continue;
    const opens = Math.max(start, from, first);
    // A stretch goes on where this window opens before its end.
    if (!(opens <= stretchTo)) [stretchFrom, stretchTo] = [opens, opens];
    stretchTo = Math.max(stretchTo, Math.min(end, to, last));
    longest = Math.max(longest, stretchTo - stretchFrom);
  }
  return longest;
};

/**
 * The longest packing in one go that sessions have time for between two minutes, in minutes.
 *
 * Example: `longestPackingIn([], 0, 60)` is 0.
 */
export const longestPackingIn = (sessions: readonly Session[], first: Minute, last: Minute): number =>
  sessions.reduce((longest, session) => {
    if (session.end <= first || session.start >= last) return longest;
    return Math.min(MOST_AT_A_TIME, Math.max(longest, longestIn(session, first, last)));
  }, 0);

/**
 * The longest packing that a session of the yard to come has time for, in minutes; 0 where nobody ever packs.
 *
 * Example: of Saturdays 8:00 to 13:30, with 10 minutes to set up and 15 to clear up, `longestPacking(yard)` is 305.
 */
export const longestPacking = (yard: YardFile): number =>
  longestPackingIn(sessionsOf(yard, calendarOf(yard.yard.timeZone)), minuteOf(yard.yard.now), Number.POSITIVE_INFINITY);
