import type { PlanFile } from '../../shared/plan.ts';
import { type Minute, minuteOf } from '../../shared/time.ts';
import type { YardFile } from '../../shared/yard-file.ts';
import { calendarOf } from '../engine/work/calendar.ts';
import { type Session, sessionsOf } from '../engine/work/sessions.ts';

/** Every minute at which the plan has something begin: preparing, mixing, stripping, packing. */
export const taskStarts = (plan: PlanFile): Minute[] =>
  [
    ...plan.pours.filter(({ prepStart, prepEnd }) => prepStart !== prepEnd).map(({ prepStart }) => prepStart),
    ...plan.batches.map(({ start }) => start),
    ...[...plan.pours, ...plan.strips].map(({ stripStart }) => stripStart),
    ...plan.orders.flatMap(({ packStart }) => packStart ?? []),
  ].map(minuteOf);

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
  const starts = taskStarts(plan);
  const hasWork = ({ start, end }: Session) => starts.some((at) => at >= start && at < end);
  const ahead = sessionsOf(yard, calendar);
  const session = ahead.find(hasWork) ?? null;
  const today = calendar.dayOf(now);
  return {
    session,
    underWay: session !== null && session.start <= now,
    idle: ahead.find((one) => one.day === today && !hasWork(one) && (!session || one.start < session.start)) ?? null,
  };
};
