import type { YardFile } from '../../../shared/yard-file.ts';
import { calendarOf } from '../calendar/calendar.ts';
import { type Session, sessionsOf } from '../calendar/sessions.ts';
import type { CostFigures } from './figures.ts';
import type { SessionCost } from './session-costs.ts';
import { commonMinutes } from './session-groups.ts';

const mean = (numbers: readonly number[]): number =>
  numbers.length === 0 ? 0 : numbers.reduce((sum, one) => sum + one, 0) / numbers.length;

const peopleMinutes = ({ windows }: Session): number =>
  windows.reduce((sum, { start, end, crew }) => sum + (end - start) * crew, 0);

/**
 * What a minute of work bears of what a session costs whatever is made in it, in minor units: its fixed cost, and getting
 * going and clearing up at the wage, by the minutes worked in a session by the plan (without a plan, by the hours that people are
 * there). 0 where the yard has no hours, or nobody said what a session costs.
 */
export const sessionShare = (yard: YardFile, costs: readonly SessionCost[], figures: CostFigures): number => {
  const sessions = sessionsOf(yard, calendarOf(yard.yard.timeZone));
  const worked = costs.filter(({ minutes }) => minutes > 0);
  const starts = new Set(worked.map(({ start }) => start));
  const own = worked.length > 0 ? sessions.filter(({ start }) => starts.has(start)) : sessions;
  const minutes = mean(worked.length > 0 ? worked.map((one) => one.minutes) : sessions.map(peopleMinutes));
  const common = mean(own.map((session) => commonMinutes(session, yard.yard)));
  const cost = (figures.sessionFixed ?? 0) + ((figures.wageHour ?? 0) * common) / 60;
  return minutes > 0 ? cost / minutes : 0;
};
