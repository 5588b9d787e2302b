import { clockMinutes, type DayNumber, dayNumber, type Minute } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import type { Calendar } from '../calendar/calendar.ts';
import type { MaterialArrival } from './material-flow.ts';

/** How goods come: so many days after they are ordered, by a time of day ("HH:MM"). */
export interface Coming {
  leadDays?: number | undefined;
  deliveredBy: string;
}

/**
 * The minute from which on what comes on a day is there (R10): the time by which the yard is brought things; what is there the
 * same day is fetched, and counts from 00:00 on.
 */
export const thereAt = (day: DayNumber, { leadDays, deliveredBy }: Coming, calendar: Calendar): Minute =>
  leadDays === 0 || deliveredBy === '00:00'
    ? calendar.midnightOf(day)
    : calendar.minuteAt(day, clockMinutes(deliveredBy));

/** The last day on which something can come and be there by a minute. */
export const lastDayFor = (minute: Minute, coming: Coming, calendar: Calendar): DayNumber => {
  const day = calendar.dayOf(minute);
  return thereAt(day, coming, calendar) <= minute ? day : day - 1;
};

/** What is on its way of a material, by the day it is to come. */
export const onItsWay = ({ incoming }: Pick<YardFile, 'incoming'>, material: string): MaterialArrival[] =>
  incoming.flatMap(({ material: of, on, quantity }) => (of === material ? [{ day: dayNumber(on), quantity }] : []));
