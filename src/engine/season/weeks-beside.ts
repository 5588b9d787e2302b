import { type DayNumber, dateOfDay, type Weekday, weekStartOf } from '../../../shared/time.ts';

const DAYS = 7;
/** So many weeks later it is about the same time of the year, on the same weekday. */
const WEEKS_A_YEAR = 52;

/** A week, by its first day, with how many pieces came out in it and in the week 52 before. */
export interface WeekBeside {
  week: string;
  pieces: number;
  before: number;
}

/**
 * The weeks that some days lie in, each beside the one 52 weeks before: pieces by the days on which they came out. From the first
 * week with any on either side to the last one; none where there is none.
 *
 * Example: three pieces on 6 April 2027 and one on 7 April 2026, weeks from Monday: the week of 5 April with 3 beside 1.
 */
export const weeksBeside = (
  days: readonly DayNumber[],
  { from, to, weekStart }: { from: DayNumber; to: DayNumber; weekStart: Weekday },
): WeekBeside[] => {
  const counts = new Map<DayNumber, number>();
  for (const day of days) counts.set(weekStartOf(day, weekStart), (counts.get(weekStartOf(day, weekStart)) ?? 0) + 1);
  const weeks: WeekBeside[] = [];
  for (let week = weekStartOf(from, weekStart); week <= to; week += DAYS) {
    const [pieces, before] = [counts.get(week) ?? 0, counts.get(week - WEEKS_A_YEAR * DAYS) ?? 0];
    weeks.push({ week: dateOfDay(week), pieces, before });
  }
  const isAny = ({ pieces, before }: WeekBeside) => pieces + before > 0;
  return weeks.slice(Math.max(0, weeks.findIndex(isAny)), weeks.findLastIndex(isAny) + 1);
};
