import { dateOfDay, minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { calendarOf } from '../calendar/calendar.ts';

/** The date of a yard's now, in its zone. */
export const todayIn = ({ yard: { timeZone, now } }: { yard: Pick<YardFile['yard'], 'timeZone' | 'now'> }): string =>
  dateOfDay(calendarOf(timeZone).dayOf(minuteOf(now)));
