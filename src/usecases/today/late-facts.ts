import type { StoredPlan } from '../../../db/stores/plan-store.ts';
import { dateOfDay, minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import { toAnswer } from '../plan/late-sessions.ts';
import { type LateStep, lateStepName } from '../plan/late-steps.ts';
import { workOfPlan } from '../plan/late-work.ts';
import type { SessionStep } from './session-step.ts';
import { sessionSteps } from './session-steps.ts';
import type { LateFacts, LateLine } from './today-model.ts';

const whatOf = (step: SessionStep): string => {
  if (step.kind === 'batch') return step.pours[0]?.mould ?? '';
  if (step.kind === 'pack') return step.order;
  return step.kind === 'prep' || step.kind === 'strip' ? step.mould : '';
};

/** The name by which it is said of a step that it was done, or not. */
export const nameOfStep = (step: SessionStep): string => lateStepName({ ...step, what: whatOf(step) });

/** How steps are shown: in which units, with how much water. */
export type Shown = Parameters<typeof sessionSteps>[3];

/** Steps as a session shows its steps, in order of time: of work that has begun by now. */
export const linesOf = (wanted: readonly LateStep[], yard: YardFile, stored: StoredPlan, shown: Shown): LateLine[] => {
  if (wanted.length === 0) return [];
  const names = new Set(wanted.map(({ name }) => name));
  const start = Math.min(...wanted.map(({ at }) => minuteOf(at)));
  const end = minuteOf(yard.yard.now) + 1;
  const day = calendarOf(yard.yard.timeZone).dayOf(start);
  const span = { start, end, from: start, to: end, day, windows: [] };
  return sessionSteps({ ...stored.plan, ...workOfPlan(stored) }, yard, span, shown)
    .map((step) => ({ name: nameOfStep(step), step }))
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
