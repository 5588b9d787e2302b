import { dateOfDay } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import type { Session } from '../../engine/calendar/sessions.ts';
import { fixedIn } from '../plan/fixed-plan.ts';

/** Whether a session's mixes and pours are fixed, and from how long ahead they are. */
export const fixedFacts = (yard: YardFile, session: Session | null, hours: number) => {
  const isFixed = session !== null && fixedIn(yard, session).batches.length > 0;
  const text = calendarOf(yard.yard.timeZone).instantText;
  return { hours, session: isFixed ? { start: text(session.start), date: dateOfDay(session.day) } : null };
};
export type FixedFacts = ReturnType<typeof fixedFacts>;
