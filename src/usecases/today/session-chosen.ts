import { isInstant, type Minute, minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import type { Session } from '../../engine/calendar/sessions.ts';
import { done, type Outcome, refuse } from '../core/context.ts';
import { sessionsOfDay } from '../plan/hours-of-day.ts';

/** The session that begins at an instant and is not over yet; its hours can still be changed. */
export const sessionChosen = (yard: YardFile, start: string, now: Minute): Outcome<Session> => {
  const changed = refuse(
    'session',
    'The hours of that day have been changed meanwhile. Look again; nothing was changed.',
  );
  if (!isInstant(start)) return changed;
  const minute = minuteOf(start);
  const session = sessionsOfDay(yard, calendarOf(yard.yard.timeZone).dayOf(minute)).find((one) => one.start === minute);
  if (!session) return changed;
  return session.end > now ? done(session) : refuse('session', 'Those hours are over. Nothing was changed.');
};
