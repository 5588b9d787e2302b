import type { Weekday } from './time.ts';

/** What the days of the week are called. The first three letters stand for them where there is little room. */
export const DAY_NAMES: Readonly<Record<Weekday, string>> = {
  MO: 'Monday',
  TU: 'Tuesday',
  WE: 'Wednesday',
  TH: 'Thursday',
  FR: 'Friday',
  SA: 'Saturday',
  SU: 'Sunday',
};

/** What the months are called, from January on, shortened in the same way. */
export const MONTH_NAMES = [
  ...['January', 'February', 'March', 'April', 'May', 'June'],
  ...['July', 'August', 'September', 'October', 'November', 'December'],
];

const LETTERS = 3;

/** "Sat" of 'SA'. `shortDayName('SA')` is 'Sat'. */
export const shortDayName = (day: Weekday): string => DAY_NAMES[day].slice(0, LETTERS);

/** "May" of the fifth month. `shortMonthName(5)` is 'May'. */
export const shortMonthName = (month: number): string => (MONTH_NAMES[month - 1] ?? '').slice(0, LETTERS);
