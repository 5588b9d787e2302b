import { dateOfDay } from '../../../shared/time.ts';
import type { Calendar } from '../../engine/calendar/calendar.ts';
import type { Session } from '../../engine/calendar/sessions.ts';
import { hoursOfPeople } from '../plan/hours-of-people.ts';

/**
 * A session: its date, its first and last instant, and who is there when. One of `windows` is one person's hours or several's
 * (`hoursOfPeople`). `wet` is when one person keeps wet what came out of its mould before, where the plan has minutes for it.
 */
export interface SessionHours {
  date: string;
  start: string;
  end: string;
  windows: readonly { start: string; end: string; crew: number }[];
  wet?: { start: string; end: string };
}

/** A session as pages show it. */
export const hoursFacts = (session: Session, { instantText }: Pick<Calendar, 'instantText'>): SessionHours => ({
  date: dateOfDay(session.day),
  start: instantText(session.start),
  end: instantText(session.end),
  windows: hoursOfPeople(session.windows).map(({ start, end, crew }) => ({
    ...{ start: instantText(start), end: instantText(end), crew },
  })),
  ...(session.wetUntil > session.from
    ? { wet: { start: instantText(session.from), end: instantText(session.wetUntil) } }
    : {}),
});
