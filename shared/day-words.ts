import { shortDayName, shortMonthName } from './day-names.ts';
import { dayNumber, weekdayOf } from './time.ts';

/**
 * A date as people say it, without its year. What is no date, as a changed form may send one, stays as it is.
 *
 * `dayWords('2027-05-08')` is "Sat 8 May".
 */
export const dayWords = (date: string): string => {
  const [, month, day] = date.split('-').map(Number) as [number, number, number];
  const number = dayNumber(date);
  return Number.isNaN(number) ? date : `${shortDayName(weekdayOf(number))} ${day} ${shortMonthName(month)}`;
};

/**
 * The same with its year, where the day has to say all of itself.
 *
 * `fullDayWords('2027-05-08')` is "Sat 8 May 2027".
 */
export const fullDayWords = (date: string): string => `${dayWords(date)} ${date.slice(0, 4)}`;
