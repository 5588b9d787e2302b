import { type DayNumber, dayNumber, type Minute } from '../../shared/time.ts';
import type { ExtraWindow } from '../../shared/work.ts';
import type { YardFile } from '../../shared/yard-file.ts';
import { calendarOf } from '../engine/work/calendar.ts';
import { type OpenWindow, type Session, sessionsOf } from '../engine/work/sessions.ts';

/** One-off hours without their date, as the store keeps them for a day. */
export type Hours = Omit<ExtraWindow, 'date'>;

/** The sessions that begin on a date, those over already among them. */
export const sessionsOfDay = (yard: YardFile, day: DayNumber): Session[] => {
  const calendar = calendarOf(yard.yard.timeZone);
  const midnight = calendar.instantText(calendar.midnightOf(day));
  const asOfThen = { ...yard, yard: { ...yard.yard, now: midnight, horizonDays: 1 } };
  return sessionsOf(asOfThen, calendar).filter((session) => session.day === day);
};

/** A window as clock times: what the calendar makes of them again is the same window. */
const hoursOf = ({ start, end, crew, allows }: OpenWindow, day: DayNumber, timeZone: string): Hours => {
  const calendar = calendarOf(timeZone);
  const clock = (minute: Minute) => calendar.instantText(minute).slice(11, 16);
  const untilMidnight = calendar.dayOf(end) !== day;
  return { start: clock(start), end: untilMidnight ? '24:00' : clock(end), crew, allows };
};

/**
 * The hours of a date with those of one session put through `change`: a window it returns null for is left out. This is
 * what takes the place of the date's usual hours.
 */
export const hoursWith = (
  yard: YardFile,
  date: string,
  sessionStart: Minute,
  change: (window: OpenWindow, index: number) => OpenWindow | null,
): Hours[] => {
  const day = dayNumber(date);
  return sessionsOfDay(yard, day)
    .flatMap((session) => (session.start === sessionStart ? session.windows.map(change) : session.windows))
    .flatMap((window) => (window === null ? [] : hoursOf(window, day, yard.yard.timeZone)));
};
