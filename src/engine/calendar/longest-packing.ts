import type { Minute } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { calendarOf } from './calendar.ts';
import { type Session, sessionsOf } from './sessions.ts';

/** A session that is longer than this is worked in two (the decoder cuts it at midnight). */
const MOST_AT_A_TIME = 16 * 60;

/** The longest stretch of a session in which somebody is there to pack. */
const longestIn = ({ from, to, windows }: Session): number => {
  let longest = 0;
  let stretch: { from: Minute; to: Minute } | null = null;
  for (const window of windows.filter(({ allows, crew }) => allows.includes('pack') && crew > 0)) {
    const [start, end]: [Minute, Minute] = [Math.max(window.start, from), Math.min(window.end, to)];
    stretch =
      stretch !== null && start <= stretch.to
        ? { from: stretch.from, to: Math.max(stretch.to, end) }
        : { from: start, to: end };
    longest = Math.max(longest, stretch.to - stretch.from);
  }
  return longest;
};

/**
 * The longest packing that a session of the yard has time for, in minutes; 0 where nobody ever packs.
 *
 * Example: of Saturdays 8:00 to 13:30, with 10 minutes to set up and 15 to clear up, `longestPacking(yard)` is 305.
 */
export const longestPacking = (yard: YardFile): number =>
  Math.min(MOST_AT_A_TIME, Math.max(0, ...sessionsOf(yard, calendarOf(yard.yard.timeZone)).map(longestIn)));
