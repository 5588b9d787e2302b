import { type Minute, minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import { curingTimesOf } from './curing-times.ts';

/** The instant from which a poured piece is fit to go out by the plan's temperatures; null when that is past by `now`. */
export const readyFrom = (
  yard: YardFile,
  { casting, filledAt }: { casting: string; filledAt: string },
  now: Minute,
): string | null => {
  const cured = curingTimesOf(yard).curedAt(casting, minuteOf(filledAt));
  return cured > now ? calendarOf(yard.yard.timeZone).instantText(cured) : null;
};
