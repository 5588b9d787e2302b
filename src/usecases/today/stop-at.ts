import { replaceDay } from '../../../db/stores/work-store.ts';
import { dayWords } from '../../../shared/day-words.ts';
import { dateOfDay, minuteOf } from '../../../shared/time.ts';
import { done, type Outcome, type UseCaseContext } from '../core/context.ts';
import { type Changed, changing } from '../plan/changing.ts';
import { hoursKind } from '../plan/hours-changed.ts';
import { hoursWith } from '../plan/hours-of-day.ts';
import { clockInSession } from './clock-in-session.ts';
import { sessionChosen } from './session-chosen.ts';

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
      const session = chosen.value;
      const stop = clockInSession(yard, session, { field: 'at', text: at, now });
      if (!stop.ok) return stop;
      const hours = hoursWith(yard, dateOfDay(session.day), session.start, (window) =>
        window.start >= stop.value ? null : { ...window, end: Math.min(window.end, stop.value) },
      );
      await replaceDay(tx, dateOfDay(session.day), hours);
      return done(null);
    },
  );
};
