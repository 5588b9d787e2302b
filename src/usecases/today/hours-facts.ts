import { dateOfDay } from '../../../shared/time.ts';
import type { Calendar } from '../../engine/calendar/calendar.ts';
import type { Session } from '../../engine/calendar/sessions.ts';
import type { SessionHours } from './today-model.ts';

/** A session as pages show it. */
export const hoursFacts = (session: Session, { instantText }: Pick<Calendar, 'instantText'>): SessionHours => ({
  date: dateOfDay(session.day),
  start: instantText(session.start),
  end: instantText(session.end),
  windows: session.windows.map(({ start, end, crew }) => ({
    ...{ start: instantText(start), end: instantText(end), crew },
  })),
});
