import { type Minute, minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import type { Session } from '../../engine/calendar/sessions.ts';
import { sessionsAround } from './hours-of-day.ts';

/** So long after its end what was done in a session can still be written down as it was planned. */
const GRACE_MINUTES = 60;

/** A session and until when its work may be written down late: no longer than to the next one, which has work of its own. */
export interface Grace {
  session: Session;
  until: Minute;
}

/** The sessions around an instant, each with the end of its grace, in order of time. */
const gracesAround = (yard: YardFile, minute: Minute): Grace[] => {
  const sessions = sessionsAround(yard, minute);
  return sessions.map((session, place) => ({
    session,
    until: Math.min(session.end + GRACE_MINUTES, sessions[place + 1]?.start ?? Number.POSITIVE_INFINITY),
  }));
};

/** The session that is over at the yard's now and whose work may still be written down late; null when there is none. */
export const graceNow = (yard: YardFile): Grace | null => {
  const now = minuteOf(yard.yard.now);
  return gracesAround(yard, now).find(({ session, until }) => session.end <= now && now < until) ?? null;
};

/** When the first grace ends that is not over by the yard's now, of a session under way or to come among them. */
export const nextGraceEnd = (yard: YardFile): Minute => {
  const now = minuteOf(yard.yard.now);
  return Math.min(...gracesAround(yard, now).flatMap(({ until }) => (until > now ? [until] : [])));
};
