import { DAY_NAMES, shortMonthName } from '../../shared/day-names.ts';
import { dayWords, fullDayWords } from '../../shared/day-words.ts';
import { daysText } from '../../shared/days-text.ts';
import { dayNumber, weekdayOf } from '../../shared/time.ts';

/** Dates further off than this many days, or gone by longer, are written with their year. */
const DAYS_WITHOUT_YEAR = 270;

/** "Sat 8 May"; with the year when it is not one of the months around today: "Sat 8 May 2028". */
export const dayText = (date: string, today: string): string => {
  const daysOff = dayNumber(date) - dayNumber(today);
  const near = daysOff <= DAYS_WITHOUT_YEAR && daysOff > -DAYS_WITHOUT_YEAR;
  return near ? dayWords(date) : fullDayWords(date);
};

/** "8 May": where there is no room for more, beside days that say all of it. */
export const shortDayText = (date: string): string => {
  const [, month, day] = date.split('-').map(Number) as [number, number, number];
  return `${day} ${shortMonthName(month)}`;
};

/** "Saturday" for any date. */
export const weekdayName = (date: string): string => DAY_NAMES[weekdayOf(dayNumber(date))];

/** "today", "tomorrow" or "on Saturday" for the next six days, else "on Sat 8 May". */
export const onDayText = (date: string, today: string): string => {
  const daysOff = dayNumber(date) - dayNumber(today);
  if (daysOff === 0) return 'today';
  if (daysOff === 1) return 'tomorrow';
  if (daysOff > 1 && daysOff < 7) return `on ${weekdayName(date)}`;
  return `on ${dayText(date, today)}`;
};

/** "2 days to spare", "3 days late", "5 weeks late", or "on the day" for a finish beside the date it was meant for. */
export const spareText = (finish: string, due: string): string => {
  const days = dayNumber(due) - dayNumber(finish);
  if (days === 0) return 'on the day';
  return days > 0 ? `${daysText(days)} to spare` : `${daysText(-days)} late`;
};

/** Minutes of a clock show in steps of five: "07:33" is "7:35". Written without a leading zero. */
export const clockText = (instant: string): string => {
  const minutes = Number(instant.slice(11, 13)) * 60 + Number(instant.slice(14, 16));
  const rounded = Math.round(minutes / 5) * 5;
  return `${Math.floor(rounded / 60)}:${String(rounded % 60).padStart(2, '0')}`;
};

/** At the head of what happens on a day: "Today, Sat 8 May", "Tomorrow, Sun 9 May", "Sat 15 May". */
export const dayHeading = (date: string, today: string): string => {
  const daysOff = dayNumber(date) - dayNumber(today);
  const near = daysOff === 0 ? 'Today, ' : daysOff === 1 ? 'Tomorrow, ' : '';
  return near + dayText(date, today);
};

/** At the head of what belongs to a week, named by its first day: "This week", "Week of Mon 12 Apr". */
export const weekHeading = (week: string, thisWeek: string, today: string): string =>
  week === thisWeek ? 'This week' : `Week of ${dayText(week, today)}`;

/** "Today" or "Saturday" for today and the next six days, with which a maker calls a session; null further off. */
export const dayWord = (date: string, today: string): string | null => {
  const daysOff = dayNumber(date) - dayNumber(today);
  if (daysOff === 0) return 'Today';
  return daysOff > 0 && daysOff < 7 ? weekdayName(date) : null;
};
