import { clockMinutes, dayNumber, isDate, isInstant, type Minute, minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import { done, type Outcome, refuse } from './context.ts';

const CLOCK = /^([01]\d|2[0-3]):[0-5]\d$/;

/** A minute of the yard's zone: a time of today, or a day and a time; null where it is neither. */
const minuteWritten = (text: string, yard: YardFile, now: Minute): Minute | null => {
  const calendar = calendarOf(yard.yard.timeZone);
  const [clock = '', day] = text.split(' ').reverse();
  if (!CLOCK.test(clock) || (day !== undefined && !isDate(day))) return null;
  return calendar.minuteAt(day === undefined ? calendar.dayOf(now) : dayNumber(day), clockMinutes(clock));
};

/**
 * The instant at which work that is recorded at `now` was done. It is told as an instant, as a time of today ("10:45") or
 * as a day and a time ("2027-04-10 10:45"); null stands for just now. Refused at `path`, or `time` where it was typed, when it
 * is none of these, or still to come.
 */
export const writtenAt = (
  at: string | null | undefined,
  { now, yard, path = 'at' }: { now: string; yard: YardFile; path?: string },
): Outcome<string> => {
  if (at === null || at === undefined) return done(now);
  const minute = isInstant(at) ? minuteOf(at) : minuteWritten(at, yard, minuteOf(now));
  const field = isInstant(at) ? path : 'time';
  if (minute === null) return refuse(field, 'When? Write a time such as 10:45. Nothing was changed.');
  if (minute > minuteOf(now)) return refuse(field, 'That time is still to come.');
  return done(isInstant(at) ? at : calendarOf(yard.yard.timeZone).instantText(minute));
};
