import { type DayNumber, dayNumber, type Minute } from '../../../shared/time.ts';
import type { ExtraWindow } from '../../../shared/work.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { type Calendar, calendarOf } from '../../engine/calendar/calendar.ts';
import { type OpenWindow, type Session, sessionsOf } from '../../engine/calendar/sessions.ts';

/** One-off hours without their date, as the store keeps them for a day. */
export type Hours = Omit<ExtraWindow, 'date'>;

const sessionsFrom = (yard: YardFile, first: DayNumber, horizonDays: number): Session[] => {
  const calendar = calendarOf(yard.yard.timeZone);
  const midnight = calendar.instantText(calendar.midnightOf(first));
  return sessionsOf({ ...yard, yard: { ...yard.yard, now: midnight, horizonDays } }, calendar);
};

/** The sessions that begin on a date, those over already among them. */
export const sessionsOfDay = (yard: YardFile, day: DayNumber): Session[] =>
  sessionsFrom(yard, day - 1, 2).filter((session) => session.day === day);

/** A window as clock times of its date: what the calendar makes of them again is the same window. */
const hoursOf = ({ start, end, crew, allows }: OpenWindow, calendar: Calendar): Hours => {
  const clock = (minute: Minute) => calendar.instantText(minute).slice(11, 16);
  const untilMidnight = calendar.dayOf(end) !== calendar.dayOf(start);
  return { start: clock(start), end: untilMidnight ? '24:00' : clock(end), crew, allows };
};

/**
 * The hours of a date with those of one session put through `change`: a window it returns null for is left out, several take its place. This is
 * what takes the place of the date's usual hours. A session that goes on past midnight has windows of two dates; only
 * those of this date are in it.
 */
export const hoursWith = (
  yard: YardFile,
  date: string,
  sessionStart: Minute,
  change: (window: OpenWindow, index: number) => OpenWindow | readonly OpenWindow[] | null,
): Hours[] => {
  const calendar = calendarOf(yard.yard.timeZone);
  const day = dayNumber(date);
  const changed = sessionsFrom(yard, day - 1, 2).flatMap((session) =>
    session.windows
      .map((window, index) => ({ window, after: session.start === sessionStart ? change(window, index) : window }))
      .filter(({ window }) => calendar.dayOf(window.start) === day),
  );
  return changed.flatMap(({ after }) => [after ?? []].flat().map((window) => hoursOf(window, calendar)));
};
