import type { StoredPlan } from '../../../db/stores/plan-store.ts';
import { dateOfDay, minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import { toAnswer } from '../plan/late-sessions.ts';
import type { LateStep } from '../plan/late-steps.ts';
import { workOfPlan } from '../plan/late-work.ts';
import { type Shown, sessionSteps } from './session-steps.ts';
import type { LateFacts, LateLine } from './today-model.ts';

/** Steps as a session shows its steps, in order of time: of work that has begun by now. */
export const linesOf = (wanted: readonly LateStep[], yard: YardFile, stored: StoredPlan, shown: Shown): LateLine[] => {
  if (wanted.length === 0) return [];
  const names = new Set(wanted.map(({ name }) => name));
  const start = Math.min(...wanted.map(({ at }) => minuteOf(at)));
  const end = minuteOf(yard.yard.now) + 1;
  const day = calendarOf(yard.yard.timeZone).dayOf(start);
  const span = { start, end, from: start, to: end, wetUntil: start, day, windows: [] };
  const work = workOfPlan(stored);
  return sessionSteps({ ...stored.plan, ...work, coats: work.coats ?? [] }, yard, span, shown)
    .map((step) => ({ name: step.name, step }))
    .filter(({ name }) => names.has(name));
};

/** What is not recorded yet, session by session, the first one first: in that order it can be. */
export const lateFacts = (yard: YardFile, stored: StoredPlan, shown: Shown): LateFacts[] => {
  const sessions = toAnswer(yard, stored.plan, workOfPlan(stored));
  const { instantText } = calendarOf(yard.yard.timeZone);
  const answered = sessions.flatMap(({ steps }) => steps);
  const lines = linesOf(answered, yard, stored, shown);
  return sessions.map(({ key, day, start, end, steps }) => {
    const names = new Set(steps.map(({ name }) => name));
    return {
      session: key,
      date: dateOfDay(day),
      hours: end === null ? null : { start: instantText(start), end: instantText(end) },
      lines: lines.filter(({ name }) => names.has(name)),
    };
  });
};
