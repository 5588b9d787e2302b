import { dateOfDay, dayNumber } from '../../../shared/time.ts';

/** How far ahead a forecast says anything of single days. */
const DAYS_AHEAD = 7;

/** Today and the days after it that are asked about. */
export const comingDays = (today: string): string[] =>
  Array.from({ length: DAYS_AHEAD }, (_, index) => dateOfDay(dayNumber(today) + index));
