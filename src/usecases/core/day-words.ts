import { shortDayName, shortMonthName } from '../../../shared/day-names.ts';
import { dayNumber, weekdayOf } from '../../../shared/time.ts';

/**
 * A date in the words of a change: '2027-05-08' is "Sat 8 May". What is no date, as a changed form may send one, stays as it is:
 * the words of a change are made before it is refused.
 */
export const dayWords = (date: string): string => {
  const [, month, day] = date.split('-').map(Number) as [number, number, number];
  const number = dayNumber(date);
  return Number.isNaN(number) ? date : `${shortDayName(weekdayOf(number))} ${day} ${shortMonthName(month)}`;
};

/** The same with the year where that is another one than today's: "Sat 8 May", "Mon 8 May 2028". */
export const dayYearWords = (date: string, today: string): string =>
  date.slice(0, 4) === today.slice(0, 4) ? dayWords(date) : `${dayWords(date)} ${date.slice(0, 4)}`;

/** "today", "on Sat 8 May", "on Mon 8 May 2028" */
export const onDayWords = (date: string, today: string): string =>
  date === today ? 'today' : `on ${dayYearWords(date, today)}`;

/** The clock of an instant as people say it: "9:05". */
export const clockWords = (instant: string): string => instant.slice(11, 16).replace(/^0/, '');

/** " at 9:05" of an instant as it stands in a sentence; with its day where that is another one. */
export const atWords = (instant: string, today: string): string => {
  const day = instant.slice(0, 10);
  return `${day === today ? '' : ` ${onDayWords(day, today)}`} at ${clockWords(instant)}`;
};

/** The same of work of another day; nothing for work of today. */
export const earlierWords = (instant: string, today: string): string =>
  instant.slice(0, 10) === today ? '' : atWords(instant, today);
