import { countText } from './plural.ts';

const WEEK = 7;
const YEAR = 365.25;
const MONTH = YEAR / 12;

/** From so many on, days say less than weeks, weeks less than months, months less than years. */
const MOST_DAYS = 28;
const MOST_WEEKS = 17;
const MOST_MONTHS = 24;

/**
 * A number of days as people say it: days up to four weeks, then about so many weeks, months or years. A long delay is a
 * measure, and no longer counted.
 *
 * Example: `daysText(1)` is "1 day", `daysText(30)` "4 weeks", `daysText(150)` "5 months", `daysText(2579)` "7 years".
 */
export const daysText = (days: number): string => {
  if (days < MOST_DAYS) return countText(days, 'day');
  const [weeks, months] = [Math.round(days / WEEK), Math.round(days / MONTH)];
  if (weeks <= MOST_WEEKS) return countText(weeks, 'week');
  return months < MOST_MONTHS ? countText(months, 'month') : countText(Math.round(days / YEAR), 'year');
};
