import { clockMinutes, type DayNumber, dayNumber, type Minute, minuteOf } from '../../../shared/time.ts';
import type { TaskKind } from '../../../shared/work.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import type { Calendar } from './calendar.ts';
import { datesOf } from './recurrence.ts';
import { type WetYard, wettingOf } from './wetting.ts';

/** Hours during which `crew` people more are there, for the kinds of work listed. Half-open. */
export interface OpenWindow {
  start: Minute;
  end: Minute;
  crew: number;
  allows: TaskKind[];
}

/** Windows that touch or overlap. Tasks lie within `from`..`to`: setting up and clearing up are left out. */
export interface Session {
  start: Minute;
  end: Minute;
  from: Minute;
  to: Minute;
  /** From `from` until then one person keeps wet what came out of its mould before; `from` itself where nobody does. */
  wetUntil: Minute;
  /** Local date of `start`. */
  day: DayNumber;
  /** By start. */
  windows: OpenWindow[];
}

interface Hours {
  start: string;
  end: string;
  crew: number;
  allows: TaskKind[];
}

/** What the sessions of a yard are worked out from. */
export type YardHours = Pick<YardFile, 'yard' | 'work' | 'closed' | 'extra'> & WetYard;

const windowsOf = (yard: YardHours, calendar: Calendar, first: DayNumber, last: DayNumber): OpenWindow[] => {
  const windows: OpenWindow[] = [];
  const open = (hours: Hours, days: readonly DayNumber[]) => {
    const [from, to] = [clockMinutes(hours.start), clockMinutes(hours.end)];
    for (const day of days) {
      const [start, end] = [calendar.minuteAt(day, from), calendar.minuteAt(day, to)];
      // Hours that begin in a gap of the clock may be over before they begin.
      if (end > start) windows.push({ start, end, crew: hours.crew, allows: hours.allows });
    }
  };
  const closed = new Set(yard.closed.map(dayNumber));
  for (const hours of yard.work)
    open(
      hours,
      datesOf(hours, first, last).filter((day) => !closed.has(day)),
    );
  for (const hours of yard.extra)
    open(
      hours,
      [dayNumber(hours.date)].filter((day) => day >= first && day <= last),
    );
  return windows.sort((a, b) => a.start - b.start);
};

/** Joins windows in order of start into spans without a gap between them. */
const joined = (windows: OpenWindow[]): { start: Minute; end: Minute; windows: OpenWindow[] }[] => {
  const spans: { start: Minute; end: Minute; windows: OpenWindow[] }[] = [];
  for (const window of windows) {
    const span = spans.at(-1);
    if (span && window.start <= span.end) {
      span.end = Math.max(span.end, window.end);
      span.windows.push(window);
    } else spans.push({ start: window.start, end: window.end, windows: [window] });
  }
  return spans;
};

/**
 * The sessions of the dates from date(now) to date(now) + horizonDays (rule R1), in order of time; those over by `now`
 * are left out, one under way is whole. A closed date opens no repeating window, an extra window is open all the same.
 * Where setting up and clearing up take the whole session, `to` is before `from` and no task fits.
 *
 * Example: windows of 08:00-13:30 and 09:00-12:00 on one Saturday are one session of 330 minutes with two windows; with
 * setUpMinutes 10 and clearUpMinutes 15 tasks lie from 08:10 to 13:15. A mix that is wetted for 10 minutes makes `wetUntil` 08:20
 * where pieces could be stripped on Friday.
 */
export const sessionsOf = (yard: YardHours, calendar: Calendar): Session[] => {
  const now = minuteOf(yard.yard.now);
  const first = calendar.dayOf(now);
  const spans = joined(windowsOf(yard, calendar, first, first + yard.yard.horizonDays));
  const wetMinutes = wettingOf(yard, (from) => windowsOf(yard, calendar, first - from, first + yard.yard.horizonDays));
  return spans
    .filter((span) => span.end > now)
    .map((span) => {
      const from = span.start + yard.yard.setUpMinutes;
      return {
        ...span,
        from,
        to: span.end - yard.yard.clearUpMinutes,
        wetUntil: from + wetMinutes(span.start),
        day: calendar.dayOf(span.start),
      };
    });
};
