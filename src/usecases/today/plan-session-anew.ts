import { addPlannedAnew } from '../../../db/stores/change-store.ts';
import { dayWords } from '../../../shared/day-words.ts';
import { dateOfDay, isInstant, minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import { type Session, sessionsOf } from '../../engine/calendar/sessions.ts';
import { done, type Outcome, refuse, type UseCaseContext } from '../core/context.ts';
import { type Changed, changing } from '../plan/changing.ts';
import { fixedIn } from '../plan/fixed-plan.ts';

const sessionAt = (yard: YardFile, start: string): Session | undefined =>
  isInstant(start)
    ? sessionsOf(yard, calendarOf(yard.yard.timeZone)).find((session) => session.start === minuteOf(start))
    : undefined;

/** Lets go for once of what is fixed for a session and plans it anew; undoing that brings back just what was fixed. */
export const planSessionAnew = (
  context: UseCaseContext,
  start: string,
): Promise<Outcome<Changed<{ start: string; date: string }>>> =>
  changing(
    context,
    { kind: 'planned anew', words: ({ date }) => `${dayWords(date)} replanned` },
    async (tx, yard, change) => {
      const session = sessionAt(yard, start);
      const fixed = session && fixedIn(yard, session);
      if (!fixed || fixed.batches.length === 0)
        return refuse('session', 'Nothing is fixed for that session any more. Nothing was changed.');
      await addPlannedAnew(tx, { change, sessionStart: start, before: fixed });
      return done({ start, date: dateOfDay(session.day) });
    },
    { unfixed: (value) => ({ anew: value.start }) },
  );
