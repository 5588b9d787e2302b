import { minuteOf, weekdayOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { calendarOf } from '../calendar/calendar.ts';
import { sessionsOf } from '../calendar/sessions.ts';
import { wetCuresOf } from '../calendar/wetting.ts';
import { packingHours } from './in-one-go.ts';
import type { PackingHours, Problem, Shifts } from './problem.ts';
import { shiftsOf } from './shifts.ts';

/** What the hours of a yard come to from `now` on; nothing in it is ever changed. */
interface Hours extends Pick<Problem, 'now' | 'today' | 'horizonEnd' | 'handover'> {
  shifts: Shifts;
  packing: PackingHours;
}

const handoverDays = (yard: YardFile, today: number): Int32Array => {
  const days = yard.yard.handoverDays;
  const length = yard.yard.horizonDays + 2;
  const next = new Int32Array(length);
  for (let i = 0; i < length; i++) {
    let day = today + i;
    if (days?.length) while (!days.includes(weekdayOf(day))) day++;
    next[i] = day;
  }
  return next;
};

const workedOut = (yard: YardFile): Hours => {
  const calendar = calendarOf(yard.yard.timeZone);
  const now = minuteOf(yard.yard.now);
  const today = calendar.dayOf(now);
  const handover = handoverDays(yard, today);
  const horizonEnd = calendar.midnightOf(today + yard.yard.horizonDays + 1);
  const sessions = sessionsOf(yard, calendar);
  const shifts = shiftsOf(sessions, now, calendar);
  const packing = packingHours(sessions, shifts, { now, today, horizonEnd, handover });
  return { now, today, horizonEnd, handover, shifts, packing };
};

/** Hours that were worked out, with the yard they were worked out for. */
interface Known {
  yard: YardFile;
  hours: Hours;
}

/** By list of work hours; a question is asked of a handful of yards that share one. */
const known = new WeakMap<YardFile['work'], Known[]>();
const MOST_KNOWN = 4;

const hasSameWetting = (a: YardFile, b: YardFile): boolean => {
  if (a.mixes === b.mixes && a.castings === b.castings && a.moulds === b.moulds) return true;
  const [cures, others] = [wetCuresOf(a), wetCuresOf(b)];
  const isSame = ({ hours, minutes }: (typeof cures)[number], i: number) =>
    hours === others[i]!.hours && minutes === others[i]!.minutes;
  return cures.length === others.length && cures.every(isSame);
};

/** All that hours are worked out from is the same. */
const hasSameHours = (a: YardFile, b: YardFile): boolean =>
  a.closed === b.closed &&
  a.extra === b.extra &&
  a.yard.handoverDays === b.yard.handoverDays &&
  a.yard.now === b.yard.now &&
  a.yard.timeZone === b.yard.timeZone &&
  a.yard.horizonDays === b.yard.horizonDays &&
  a.yard.setUpMinutes === b.yard.setUpMinutes &&
  a.yard.clearUpMinutes === b.yard.clearUpMinutes &&
  hasSameWetting(a, b);

/**
 * The hours of a yard, worked out once for all yards that have the very same lists of them: a question is asked of several
 * that differ in their orders or in what is kept.
 */
export const hoursOf = (yard: YardFile): Hours => {
  const before = known.get(yard.work) ?? [];
  const found = before.find((one) => hasSameHours(one.yard, yard));
  if (found) return found.hours;
  const hours = workedOut(yard);
  known.set(yard.work, [{ yard, hours }, ...before].slice(0, MOST_KNOWN));
  return hours;
};
