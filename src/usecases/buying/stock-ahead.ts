import type { Material } from '../../../shared/material.ts';
import { minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { stockCourse } from '../../engine/buy/stock-course.ts';
import { onItsWay } from '../../engine/buy/there-at.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import type { MaterialUse } from './material-uses.ts';
import type { StockCounted } from './stock-facts.ts';

/** How a material goes on for some weeks with nothing bought beside what is on its way, in the unit it is kept in. */
export interface StockAhead {
  /** What may be used now. */
  start: number;
  /** In so many days from today there is so much left. */
  levels: readonly { day: number; left: number }[];
  /** In so many days from today it runs short; null where it does not. */
  shortDay: number | null;
}

/** So far ahead it is shown. */
export const DAYS_AHEAD = 42;

/** The course of one material; `counted` is what is there of it. */
export const stockAhead = (
  material: Material,
  uses: readonly MaterialUse[],
  { yard, now, counted }: { yard: YardFile; now: string; counted: Pick<StockCounted, 'inYard' | 'past'> },
): StockAhead => {
  const calendar = calendarOf(yard.yard.timeZone);
  const today = calendar.dayOf(minuteOf(now));
  const end = calendar.midnightOf(today + DAYS_AHEAD);
  const soon = uses.filter(({ at }) => at < end);
  const clock = { now: minuteOf(now), calendar, deliveredBy: yard.yard.deliveredBy };
  const course = stockCourse(material, soon, onItsWay(yard, material.id), clock).filter(
    ({ day }) => day < today + DAYS_AHEAD,
  );
  const short = course.find((step) => step.short > 0);
  return {
    start: counted.inYard - counted.past,
    levels: course.map(({ day, left }) => ({ day: day - today, left })),
    shortDay: short ? short.day - today : null,
  };
};
