import { dayWords, fullDayWords } from '../../../shared/day-words.ts';

/** A date with the year where that is another one than today's: "Sat 8 May", "Mon 8 May 2028". */
export const dayYearWords = (date: string, today: string): string =>
  date.slice(0, 4) === today.slice(0, 4) ? dayWords(date) : fullDayWords(date);

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
