import { fullDayWords } from '../../../shared/day-words.ts';
import { dateOfDay, dayNumber } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { todayIn } from '../../engine/book/today-in.ts';

/** Nobody gives a date further off than is planned; a yard planned for less than a year may still be asked for one. */
const LEAST_DAYS_AHEAD = 365;

/** The last day of anything that is to come: the last that is planned, or a year from today. */
export const lastDay = (yard: YardFile): string =>
  dateOfDay(dayNumber(todayIn(yard)) + Math.max(yard.yard.horizonDays, LEAST_DAYS_AHEAD));

/** Why a day beyond the last one is refused. */
export const tooFarText = (last: string): string =>
  `That is further off than is planned. The last day is ${fullDayWords(last)}.`;
