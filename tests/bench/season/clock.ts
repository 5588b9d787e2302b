import { dateOfDay, dayNumber } from '../../../shared/time.ts';
import { calendar } from '../../contract/audit-plan.mjs';

/** The clock of a season: it stands still until somebody sets it on, and never goes back. */
export interface SeasonClock {
  /** The present minute, since 1970-01-01T00:00Z. */
  minute: number;
  /** The present instant as the program reads it. */
  now(): string;
  /** The yard's date at the present minute. */
  today(): string;
  /** The minute at which a clock of the yard shows so much on a date. */
  at(date: string, hhmm: string): number;
  /** Sets the clock on; an earlier minute leaves it where it is. */
  setOn(minute: number): void;
}

export const instantOf = (minute: number): string => `${new Date(minute * 60_000).toISOString().slice(0, 16)}:00Z`;

/** Thrown where a season is to stand still. */
export class StandStill extends Error {}

/** A clock of a zone; it throws `StandStill` rather than go past `stop`. */
export const seasonClock = (timeZone: string, minute: number, stop = Number.POSITIVE_INFINITY): SeasonClock => {
  const { dateOf, minuteAt } = calendar(timeZone);
  const clock: SeasonClock = {
    minute,
    now: () => instantOf(clock.minute),
    today: () => dateOf(clock.minute),
    at: minuteAt,
    setOn: (to) => {
      if (to > stop) throw new StandStill('The season stands still here.');
      clock.minute = Math.max(clock.minute, to);
    },
  };
  return clock;
};

export const daysAfter = (date: string, days: number): string => dateOfDay(dayNumber(date) + days);

export const daysBetween = (from: string, to: string): number => dayNumber(to) - dayNumber(from);

const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/** The date a page writes as "Sat 8 May" or "Sat 8 May 2027"; without a year the one nearest to today. Null for no day. */
export const dayOnPage = (text: string, today: string): string | null => {
  if (/\btoday\b/i.test(text)) return today;
  const [, day, month, year] = /\b(\d{1,2}) ([A-Z][a-z]{2})\b(?: (\d{4}))?/.exec(text) ?? [];
  if (!day || !month || !MONTHS.includes(month)) return null;
  const inYear = (y: number) => `${y}-${String(MONTHS.indexOf(month) + 1).padStart(2, '0')}-${day.padStart(2, '0')}`;
  if (year) return inYear(Number(year));
  const near = [-1, 0, 1].map((off) => inYear(Number(today.slice(0, 4)) + off));
  return near.sort((a, b) => Math.abs(daysBetween(today, a)) - Math.abs(daysBetween(today, b)))[0]!;
};
