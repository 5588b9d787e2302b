import type { YardFile } from '../../../shared/yard-file.ts';
import { calendarOf } from '../calendar/calendar.ts';
import { type Session, sessionsOf } from '../calendar/sessions.ts';
import type { CostFigures } from './figures.ts';
import { commonMinutes } from './session-groups.ts';

const peopleMinutes = ({ windows }: Session): number =>
  windows.reduce((sum, { start, end, crew }) => sum + (end - start) * crew, 0);

/**
 * What a minute of work bears of what sessions cost whatever is made in them, in minor units: the fixed cost, and getting going
 * and clearing up at the wage, by the hours that people are there. By the hours and not by today's plan, so that a price does
 * not move with every order that is taken. 0 where the yard has no hours, or nobody said what a session costs.
 */
export const sessionShare = (yard: YardFile, { sessionFixed, wageHour }: CostFigures): number => {
  const sessions = sessionsOf(yard, calendarOf(yard.yard.timeZone));
  const minutes = sessions.reduce((sum, session) => sum + peopleMinutes(session), 0);
  const common = sessions.reduce((sum, session) => sum + commonMinutes(session, yard.yard), 0);
  const cost = (sessionFixed ?? 0) * sessions.length + ((wageHour ?? 0) * common) / 60;
  return minutes > common ? cost / (minutes - common) : 0;
};
