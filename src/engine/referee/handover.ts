import { type DayNumber, weekdayOf } from '../../../shared/time.ts';
import type { Ground } from './ground.ts';

/**
 * The first hand-over day on or after a day.
 *
 * Example: where orders are handed over on Saturdays, that of a Saturday is the Saturday itself.
 */
export const handoverOn = (ground: Ground, day: DayNumber): DayNumber => {
  const days = ground.yard.yard.handoverDays;
  let on = day;
  while (days?.length && !days.includes(weekdayOf(on))) on++;
  return on;
};
