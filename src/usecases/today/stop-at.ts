import { replaceDay } from '../../../db/stores/work-store.ts';
import { clockMinutes, dateOfDay, minuteOf } from '../../../shared/time.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import { done, type Outcome, refuse, type UseCaseContext } from '../core/context.ts';
import { dayWords } from '../core/day-words.ts';
import { type Changed, changing } from '../plan/changing.ts';
import { hoursWith } from '../plan/hours-of-day.ts';
import { hoursKind } from './hours-changed.ts';
import { sessionChosen } from './session-chosen.ts';

const CLOCK = /^([01]\d|2[0-3]):[0-5]\d$/;

/** A session ends earlier than usual, at a time of its own day. Other hours of the day stay. */
export const stopAt = (
  context: UseCaseContext,
  { session: start, at }: { session: string; at: string },
): Promise<Outcome<Changed<null>>> => {
  const date = start.slice(0, 10);
  return changing(
    context,
    { kind: hoursKind(date), words: `Work on ${dayWords(date)} stops at ${at}` },
    async (tx, yard) => {
      const now = minuteOf(context.now);
      const chosen = sessionChosen(yard, start, now);
      if (!chosen.ok) return chosen;
      if (!CLOCK.test(at)) return refuse('at', 'When? Write a time such as 11:30.');
      const session = chosen.value;
      const calendar = calendarOf(yard.yard.timeZone);
      const stop = calendar.minuteAt(session.day, clockMinutes(at));
      const clock = (minute: number) => calendar.instantText(minute).slice(11, 16);
      if (stop <= session.start || stop >= session.end)
        return refuse('at', `Write a time between ${clock(session.start)} and ${clock(session.end)}.`);
      if (stop < now) return refuse('at', 'That time has passed.');
      const hours = hoursWith(yard, dateOfDay(session.day), session.start, (window) =>
        window.start >= stop ? null : { ...window, end: Math.min(window.end, stop) },
      );
      await replaceDay(tx, dateOfDay(session.day), hours);
      return done(null);
    },
  );
};
