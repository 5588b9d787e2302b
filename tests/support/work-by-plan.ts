import { type PlanFile, spellsOf } from '../../shared/plan.ts';
import { type Minute, minuteOf } from '../../shared/time.ts';
import type { YardFile } from '../../shared/yard-file.ts';
import { calendarOf } from '../../src/engine/calendar/calendar.ts';
import { sessionsOf } from '../../src/engine/calendar/sessions.ts';

/** One task of a plan: when it is done, and what is recorded of it then. */
export interface TaskDone {
  start: Minute;
  end: Minute;
  what:
    | { kind: 'coated'; mould: string }
    | { kind: 'set up'; mould: string; casting: string; coated: boolean }
    | { kind: 'poured'; batch: string }
    | { kind: 'stripped'; mould: string }
    /** `minutes`: of a spell with others after it. */
    | { kind: 'packed'; order: string; minutes?: number };
}

/** All tasks of a plan in the order in which they end. */
export const tasksOf = (plan: PlanFile): TaskDone[] => {
  const task = (from: string, to: string, what: TaskDone['what']): TaskDone => ({
    ...{ start: minuteOf(from), end: minuteOf(to), what },
  });
  return [
    ...plan.coats.map(({ mould, start, end }) => task(start, end, { kind: 'coated', mould })),
    ...plan.pours
      .filter(({ prepStart, prepEnd }) => prepStart !== prepEnd)
      .map(({ prepStart, prepEnd, mould, casting }) =>
        task(prepStart, prepEnd, { kind: 'set up', mould, casting, coated: false }),
      ),
    ...plan.batches.map(({ id, start, end }) => task(start, end, { kind: 'poured', batch: id })),
    ...[...plan.strips, ...plan.pours].map(({ mould, stripStart, stripEnd }) =>
      task(stripStart, stripEnd, { kind: 'stripped', mould }),
    ),
    ...plan.orders.flatMap((order) =>
      spellsOf(order).map(({ packStart, packEnd }) => {
        const minutes = order.packs ? { minutes: minuteOf(packEnd) - minuteOf(packStart) } : {};
        return task(packStart, packEnd, { kind: 'packed', order: order.id, ...minutes });
      }),
    ),
  ].sort((a, b) => a.end - b.end || a.start - b.start);
};

/** The yard a minute before its first session begins, so that work of that day is work of the plan's own date; null without one. */
export const beforeFirstSession = (yard: YardFile): YardFile | null => {
  const calendar = calendarOf(yard.yard.timeZone);
  const [session] = sessionsOf(yard, calendar);
  if (!session) return null;
  const now = Math.max(minuteOf(yard.yard.now), calendar.midnightOf(session.day), session.start - 1);
  return { ...yard, yard: { ...yard.yard, now: calendar.instantText(now) } };
};

/** Minutes of the plan's first day with work at which nothing is under way, all of them ends of tasks, in order. */
export const stillMinutes = (yard: YardFile, tasks: readonly TaskDone[]): Minute[] => {
  const calendar = calendarOf(yard.yard.timeZone);
  const midnight = calendar.midnightOf(calendar.dayOf(minuteOf(yard.yard.now)) + 1);
  const ends = [...new Set(tasks.map(({ end }) => end))].filter((end) => end < midnight);
  return ends.filter((end) => !tasks.some((task) => task.start < end && task.end > end));
};
