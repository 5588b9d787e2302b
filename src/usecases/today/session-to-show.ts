import type { PlanFile } from '../../../shared/plan.ts';
import { minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import { type Session, sessionsOf } from '../../engine/calendar/sessions.ts';
import { beginsWithin } from '../plan/plan-starts.ts';

export interface SessionToShow {
  /** The one under way or the next one that has something to do; null when none within the horizon has. */
  session: Session | null;
  underWay: boolean;
  /** Hours under way, or still to come today, in which nothing is planned. */
  idle: Session | null;
}

/** The session that Today is about at the yard's now. */
export const sessionToShow = (plan: PlanFile, yard: YardFile): SessionToShow => {
  const calendar = calendarOf(yard.yard.timeZone);
  const now = minuteOf(yard.yard.now);
  const hasWork = (session: Session) => beginsWithin(plan, session);
  const ahead = sessionsOf(yard, calendar);
  const session = ahead.find(hasWork) ?? null;
  const today = calendar.dayOf(now);
  return {
    session,
    underWay: session !== null && session.start <= now,
    idle: ahead.find((one) => one.day === today && !hasWork(one) && (!session || one.start < session.start)) ?? null,
  };
};
