import { closedDays, extraWindows, workWindows } from '../../../db/stores/work-store.ts';
import { clockMinutes, type DayNumber, dateOfDay, dayNumber, type Weekday } from '../../../shared/time.ts';
import { type ExtraWindow, ruleFault, type WorkWindow } from '../../../shared/work.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { type Calendar, calendarOf } from '../../engine/calendar/calendar.ts';
import { type PlainRhythm, rhythmOfRule } from '../../engine/calendar/plain-rule.ts';
import { datesOf } from '../../engine/calendar/recurrence.ts';
import { sessionsOf } from '../../engine/calendar/sessions.ts';
import type { UseCaseContext } from '../core/context.ts';
import { type DateReading, readDate } from '../typed/date-typed.ts';
import { type May, mayOf, ruleRefused } from '../typed/hours-form.ts';
import { showYardFrame, type YardPageHead } from './show-yard-frame.ts';

const DATES_SHOWN = 5;
/** Far enough for five times of what comes but once in a while. */
const DAYS_LOOKED_AT = 3660;

/** A stretch of days, the last one included. */
export interface DaySpan {
  from: string;
  to: string;
}

/** Hours in which nothing can be done: how long they are, with those they touch, and what opening and clearing up take. */
export interface TooShort {
  minutes: number;
  needed: number;
}

/** Hours that repeat. */
export interface RepeatingHours extends Omit<WorkWindow, 'until'> {
  id: number;
  /** The last day; null: without end. */
  until: string | null;
  /** Days of the week, where the rule says no more than that; else null. */
  rhythm: PlainRhythm | null;
  may: May;
  /** The next ones. */
  dates: readonly string[];
  tooShort: TooShort | null;
}

/** Hours of one date. */
export interface DayHours extends ExtraWindow {
  id: number;
  may: May;
  /** They take the place of the hours that repeat. */
  instead: boolean;
  tooShort: TooShort | null;
}

/** Hours of one of the next days, as they are worked. */
interface WorkedDay {
  date: string;
  hours: readonly Pick<DayHours, 'start' | 'end' | 'crew' | 'may'>[];
}

/** When the yard works. */
export interface YardHoursModel extends YardPageHead {
  weekStart: Weekday;
  /** The next session as instants; null where there is none. */
  next: { start: string; end: string } | null;
  work: readonly RepeatingHours[];
  extra: readonly DayHours[];
  off: readonly DaySpan[];
  /** The next seven days, today the first. */
  week: readonly WorkedDay[];
}

/** The next five dates a rule gives, from today on. */
const nextDates = (window: Pick<WorkWindow, 'rule' | 'from' | 'until'>, today: DayNumber): string[] =>
  datesOf(window, today, today + DAYS_LOOKED_AT)
    .slice(0, DATES_SHOWN)
    .map(dateOfDay);

/** What a rule that is being typed comes to, from the day typed beside it on: its next dates, or what is wrong with it. */
export const datesOfRule = (rule: string, from: string, how: DateReading): { dates: string[] } | { fault: string } => {
  const text = rule.toUpperCase().replace(/\s+/g, '');
  const fault = ruleFault(text);
  if (fault) return { fault: ruleRefused(fault) };
  const read = readDate(from, how);
  return { dates: nextDates({ rule: text, from: read.ok ? read.date : how.today }, dayNumber(how.today)) };
};

const WEEK_DAYS = 7;

/** A day off shuts the hours that repeat, and none of that single day. */
const weekFrom = (
  today: DayNumber,
  work: readonly Omit<RepeatingHours, 'rhythm' | 'may' | 'dates' | 'tooShort'>[],
  extra: readonly ExtraWindow[],
  off: readonly string[],
): WorkedDay[] =>
  Array.from({ length: WEEK_DAYS }, (_, at) => {
    const date = dateOfDay(today + at);
    const usual = work.filter(({ until, ...window }) => {
      const recurrence = { ...window, ...(until === null ? {} : { until }) };
      return !off.includes(date) && datesOf(recurrence, today + at, today + at).length > 0;
    });
    const hours = [...usual, ...extra.filter((window) => window.date === date)];
    return {
      date,
      hours: hours
        .map(({ start, end, crew, allows }) => ({ start, end, crew, may: mayOf(allows) }))
        .sort((a, b) => a.start.localeCompare(b.start)),
    };
  });

/** Days in a row as spans. */
const spansOf = (dates: readonly string[]): DaySpan[] => {
  const spans: DaySpan[] = [];
  for (const date of [...new Set(dates)].sort()) {
    const last = spans.at(-1);
    if (last && dayNumber(date) === dayNumber(last.to) + 1) last.to = date;
    else spans.push({ from: date, to: date });
  }
  return spans;
};

/** Whether hours of a date are too short for anything, together with those they touch. */
const shortnessIn =
  (yard: YardFile, calendar: Calendar) =>
  (date: string | undefined, start: string): TooShort | null => {
    if (date === undefined) return null;
    const at = calendar.minuteAt(dayNumber(date), clockMinutes(start));
    const session = sessionsOf(yard, calendar).find(({ windows }) => windows.some((window) => window.start === at));
    if (!session || session.to > session.from) return null;
    const { setUpMinutes, clearUpMinutes } = yard.yard;
    return { minutes: session.end - session.start, needed: setUpMinutes + clearUpMinutes };
  };

/** When the yard works: what repeats, single days, and days off, each with its id; what is over is left out. */
export const showYardHours = async (context: UseCaseContext): Promise<YardHoursModel> => {
  const { yard, yardName, today, system, habits } = await showYardFrame(context);
  const [work, extra, closed] = await context.database.read(
    async (tx) => [await workWindows(tx), await extraWindows(tx), await closedDays(tx)] as const,
  );
  const changed = new Set(extra.map(({ date }) => date));
  const off = closed.map(({ date }) => date);
  const calendar = calendarOf(yard.yard.timeZone);
  const [next] = sessionsOf(yard, calendar);
  const shortness = shortnessIn(yard, calendar);
  return {
    ...{ yardName, today, system, weekStart: habits.weekStart },
    next: next ? { start: calendar.instantText(next.start), end: calendar.instantText(next.end) } : null,
    work: work.map(({ until, ...window }) => {
      const recurrence = { ...window, ...(until === null ? {} : { until }) };
      const [rhythm, may] = [rhythmOfRule(window), mayOf(window.allows)];
      const dates = nextDates(recurrence, dayNumber(today));
      const worked = dates.find((date) => !off.includes(date));
      return { ...window, until, rhythm, may, dates, tooShort: shortness(worked, window.start) };
    }),
    extra: extra
      .filter(({ date }) => date >= today)
      .sort((a, b) => a.date.localeCompare(b.date) || a.start.localeCompare(b.start))
      .map((window) => ({
        ...window,
        may: mayOf(window.allows),
        instead: off.includes(window.date),
        tooShort: shortness(window.date, window.start),
      })),
    off: spansOf(off.filter((date) => date >= today && !changed.has(date))),
    week: weekFrom(dayNumber(today), work, extra, off),
  };
};
