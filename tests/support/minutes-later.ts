import { minuteOf } from '../../shared/time.ts';
import { calendarOf } from '../../src/engine/calendar/calendar.ts';

/** An instant so many minutes after another, in Dublin. `minutesLater('2027-04-10T09:05:00+01:00', 5)` is 9:10. */
export const minutesLater = (instant: string, minutes: number): string =>
  calendarOf('Europe/Dublin').instantText(minuteOf(instant) + minutes);
