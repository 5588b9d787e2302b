import type { PlanFile } from '../../../shared/plan.ts';
import { minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import { type Session, sessionsOf } from '../../engine/calendar/sessions.ts';
import { sessionToShow } from './session-to-show.ts';

/**
 * The next session in which something is mixed, which is what hangs on a wall and is got ready the evening before; else the
 * next that has anything to do.
 */
export const sessionForWall = (plan: PlanFile, yard: YardFile): Session | null => {
  const starts = plan.batches.map(({ start }) => minuteOf(start));
  const mixing = sessionsOf(yard, calendarOf(yard.yard.timeZone)).find(({ start, end }) =>
    starts.some((at) => at >= start && at < end),
  );
  return mixing ?? sessionToShow(plan, yard).session;
};
