import type { DayNumber, Minute } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { calendarOf } from '../calendar/calendar.ts';
import { type Session, sessionsOf } from '../calendar/sessions.ts';

/** When something is done: in a session of the yard, or, where hours were called off since, on a day without one. */
export interface WorkTime {
  start: Minute;
  day: DayNumber;
  session: Session | null;
}

const peopleAt = ({ windows }: Session, at: Minute): number =>
  windows.reduce((sum, { start, end, crew }) => (start <= at && at < end ? sum + crew : sum), 0);

/** Minutes of one person that getting going and clearing up take in a session, of all who are there then. */
export const commonMinutes = (session: Session, { setUpMinutes, clearUpMinutes }: YardFile['yard']): number =>
  setUpMinutes * peopleAt(session, session.start) + clearUpMinutes * peopleAt(session, session.end - 1);

/** Finds the session in which something is done. */
export const workTimes = (yard: YardFile): ((at: Minute) => WorkTime) => {
  const calendar = calendarOf(yard.yard.timeZone);
  const sessions = sessionsOf(yard, calendar);
  return (at) => {
    let [low, high] = [0, sessions.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if (sessions[middle]!.end <= at) low = middle + 1;
      else high = middle;
    }
    const session = sessions[low];
    if (session && session.start <= at) return { start: session.start, day: session.day, session };
    const day = calendar.dayOf(at);
    return { start: calendar.midnightOf(day), day, session: null };
  };
};
