import { type DayNumber, dateOfDay, dayNumber, type Weekday, weekdayOf } from '../../shared/time.ts';

/** The dates of the demo, all counted from the day it is first opened. */
export interface DemoDates {
  today: string;
  /** `day(3)` is in three days, `day(-3)` three days ago. */
  day(days: number): string;
  /** The first such weekday on or after a number of days from today. `next('SA', 7)` is a Saturday in 7 to 13 days. */
  next(weekday: Weekday, afterDays: number): string;
  /** The last such weekday before today. */
  last(weekday: Weekday): string;
}

export const demoDates = (today: string): DemoDates => {
  const start = dayNumber(today);
  const search = (from: DayNumber, step: 1 | -1, weekday: Weekday): string => {
    let day = from;
    while (weekdayOf(day) !== weekday) day += step;
    return dateOfDay(day);
  };
  return {
    today,
    day: (days) => dateOfDay(start + days),
    next: (weekday, afterDays) => search(start + afterDays, 1, weekday),
    last: (weekday) => search(start - 1, -1, weekday),
  };
};
