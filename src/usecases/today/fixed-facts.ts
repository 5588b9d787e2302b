import { dateOfDay } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import type { Session } from '../../engine/calendar/sessions.ts';
import { fixedIn } from '../plan/fixed-plan.ts';

/** The session that is fixed, null for none, and how many hours ahead that happens; 0: never. */
export interface FixedFacts {
  hours: number;
  session: { start: string; date: string } | null;
}

/** Whether a session is fixed, and from how long ahead they are. */
export const fixedFacts = (yard: YardFile, session: Session | null, hours: number): FixedFacts => {
  const isFixed = session !== null && fixedIn(yard, session).batches.length > 0;
  const text = calendarOf(yard.yard.timeZone).instantText;
  return { hours, session: isFixed ? { start: text(session.start), date: dateOfDay(session.day) } : null };
};
