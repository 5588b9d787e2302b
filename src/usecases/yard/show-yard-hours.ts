import { closedDays, extraWindows, workWindows } from '../../../db/stores/work-store.ts';
import { type DayNumber, dateOfDay, dayNumber } from '../../../shared/time.ts';
import { ruleFault, type WorkWindow } from '../../../shared/work.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import { rhythmOfRule } from '../../engine/calendar/plain-rule.ts';
import { datesOf } from '../../engine/calendar/recurrence.ts';
import { sessionsOf } from '../../engine/calendar/sessions.ts';
import type { UseCaseContext } from '../core/context.ts';
import { type DateReading, readDate } from '../typed/date-typed.ts';
import { mayOf, ruleRefused } from '../typed/hours-form.ts';
import { showYardFrame } from './show-yard-frame.ts';

const DATES_SHOWN = 5;
/** Far enough for five times of what comes but once in a while. */
const DAYS_LOOKED_AT = 3660;

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

/** Days in a row as spans. */
const spansOf = (dates: readonly string[]): { from: string; to: string }[] => {
  const spans: { from: string; to: string }[] = [];
  for (const date of [...new Set(dates)].sort()) {
    const last = spans.at(-1);
    if (last && dayNumber(date) === dayNumber(last.to) + 1) last.to = date;
    else spans.push({ from: date, to: date });
  }
  return spans;
};

/** When the yard works: what repeats, single days, and days off, each with its id; what is over is left out. */
export const showYardHours = async (context: UseCaseContext) => {
  const { yard, yardName, today, system, habits } = await showYardFrame(context);
  const [work, extra, closed] = await context.database.read(
    async (tx) => [await workWindows(tx), await extraWindows(tx), await closedDays(tx)] as const,
  );
  const changed = new Set(extra.map(({ date }) => date));
  const off = closed.map(({ date }) => date);
  const calendar = calendarOf(yard.yard.timeZone);
  const [next] = sessionsOf(yard, calendar);
  return {
    ...{ yardName, today, system, weekStart: habits.weekStart },
    next: next ? { start: calendar.instantText(next.start), end: calendar.instantText(next.end) } : null,
    work: work.map(({ until, ...window }) => {
      const recurrence = { ...window, ...(until === null ? {} : { until }) };
      const [rhythm, may] = [rhythmOfRule(window), mayOf(window.allows)];
      return { ...window, until, rhythm, may, dates: nextDates(recurrence, dayNumber(today)) };
    }),
    extra: extra
      .filter(({ date }) => date >= today)
      .sort((a, b) => a.date.localeCompare(b.date) || a.start.localeCompare(b.start))
      .map((window) => ({ ...window, may: mayOf(window.allows), instead: off.includes(window.date) })),
    off: spansOf(off.filter((date) => date >= today && !changed.has(date))),
  };
};
export type YardHoursModel = Awaited<ReturnType<typeof showYardHours>>;
export type RepeatingHours = YardHoursModel['work'][number];
export type DayHours = YardHoursModel['extra'][number];
