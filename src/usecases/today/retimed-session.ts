import { type Minute, minuteOf } from '../../../shared/time.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import type { Session } from '../../engine/calendar/sessions.ts';
import { done, type Outcome, type UseCaseContext } from '../core/context.ts';
import { currentPlan } from '../plan/make-plan.ts';
import type { LeftForLater } from '../plan/save-edit.ts';
import type { FormFields } from '../typed/form-fields.ts';
import { measuresOf } from '../typed/measures.ts';
import { watersOfYard } from '../yard/mix-water.ts';
import { clockInSession } from './clock-in-session.ts';
import { poursLeft } from './leave-out.ts';
import { sessionChosen } from './session-chosen.ts';
import type { SessionStep } from './session-step.ts';
import { sessionSteps } from './session-steps.ts';

/** What is left of a session where all of it moves on with its next step, before anything is planned anew. */
export interface RetimedSession {
  /** So much later the next step begins. */
  minutes: number;
  /** Each with its new times. */
  steps: readonly SessionStep[];
  /** Those that would end when the session is over. */
  tooLate: readonly SessionStep[];
  /** When the time for work ends, an instant. */
  end: string;
  /** What could be left for another day in place of what the plan leaves out. */
  toLeave: readonly LeftForLater[];
}

/** More orders are not tried: each is a plan of its own, and nobody chooses from a long list with wet gloves. */
const MOST_TRIED = 3;

const isWork = ({ kind }: SessionStep): boolean => kind !== 'set up' && kind !== 'clear up';

/**
 * The steps of a session that have not begun, moved on by as much as the first of them; the gaps between them stay.
 *
 * Example: the next step of 10:05 can begin at 10:30: all that is left begins 25 minutes later.
 */
export const movedOn = (
  steps: readonly SessionStep[],
  { now, from, to }: { now: Minute; from: Minute; to: Minute },
  instantText: (minute: Minute) => string,
): Pick<RetimedSession, 'minutes' | 'steps' | 'tooLate' | 'end'> => {
  const left = steps.filter((step) => isWork(step) && minuteOf(step.at) > now);
  const first = left.reduce((soonest, { at }) => Math.min(soonest, minuteOf(at)), Number.POSITIVE_INFINITY);
  const minutes = Math.max(0, left.length === 0 ? 0 : from - first);
  const later = (instant: string): string => instantText(minuteOf(instant) + minutes);
  const moved = left.map((step) => ({ ...step, at: later(step.at), until: later(step.until) }));
  const tooLate = moved.filter((_, place) => minuteOf(left[place]!.until) + minutes > to);
  return { minutes, steps: moved, tooLate, end: instantText(to) };
};

const chosenTime = (yard: Parameters<typeof clockInSession>[0], session: Session, text: string, now: Minute) =>
  clockInSession(yard, session, { field: 'at', text, now });

/**
 * What a slip does to the session itself, at once: nothing is planned for it. Refused at `session` or `at`, as running late is.
 */
export const retimedSession = async (
  context: UseCaseContext,
  { session: start = '', at = '' }: FormFields,
): Promise<Outcome<RetimedSession>> => {
  const { yard, plan } = await currentPlan(context);
  const now = minuteOf(context.now);
  const chosen = sessionChosen(yard, start, now);
  if (!chosen.ok) return chosen;
  const from = chosenTime(yard, chosen.value, at, now);
  if (!from.ok) return from;
  const { system, waters } = await context.database.read(async (tx) => ({
    system: (await measuresOf(tx)).system,
    waters: await watersOfYard(tx),
  }));
  const { instantText } = calendarOf(yard.yard.timeZone);
  const steps = sessionSteps(plan, yard, chosen.value, { system, waters });
  return done({
    ...movedOn(steps, { now, from: from.value, to: chosen.value.to }, instantText),
    toLeave: poursLeft(yard, plan, chosen.value).slice(0, MOST_TRIED),
  });
};
