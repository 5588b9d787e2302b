import type { PlanOfWork } from '../../../shared/late-work.ts';
import { type DayNumber, type Minute, minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import { sessionsOfDay } from './hours-of-day.ts';
import { type LateStep, lateSteps } from './late-steps.ts';
import { lateWork } from './late-work.ts';

/** The late work of one session, or of one day where its hours are no longer there. */
export interface LateSession {
  /** Names it: the instant it began, or of the day's first minute. */
  key: string;
  start: Minute;
  /** Null where its hours are no longer there. */
  end: Minute | null;
  day: DayNumber;
  steps: LateStep[];
}

type Span = Omit<LateSession, 'steps'>;

/** The session that lies round a minute, or the whole day. */
const spanAt = (yard: YardFile, spans: Map<DayNumber, Span[]>, minute: Minute): Span => {
  const calendar = calendarOf(yard.yard.timeZone);
  const spansOf = (day: DayNumber): Span[] => {
    const known = spans.get(day);
    if (known) return known;
    const found = sessionsOfDay(yard, day).map(({ start, end }) => ({
      ...{ key: calendar.instantText(start), start, end, day },
    }));
    spans.set(day, found);
    return found;
  };
  const day = calendar.dayOf(minute);
  // A session may have begun the evening before.
  const found = [...spansOf(day), ...spansOf(day - 1)].find(({ start, end }) => minute >= start && minute < end!);
  const midnight = calendar.midnightOf(day);
  return found ?? { key: calendar.instantText(midnight), start: midnight, end: null, day };
};

/** Late work by session, in order of time. */
const bySession = (yard: YardFile, steps: readonly LateStep[]): LateSession[] => {
  const sessions = new Map<string, LateSession>();
  const spans = new Map<DayNumber, Span[]>();
  for (const step of steps) {
    const span = spanAt(yard, spans, minuteOf(step.at));
    const session = sessions.get(span.key) ?? { ...span, steps: [] };
    session.steps.push(step);
    sessions.set(span.key, session);
  }
  return [...sessions.values()].sort((a, b) => a.start - b.start);
};

/**
 * Work of the session under way has its place on that session's list, as far as the plan has it; the list begins with the
 * date, also where the session did the evening before.
 */
const notListed = (session: LateSession, yard: YardFile, plan: PlanOfWork): LateSession[] => {
  const late = lateWork(yard, plan);
  const names = new Set(late && lateSteps(late).map(({ name }) => name));
  const calendar = calendarOf(yard.yard.timeZone);
  const midnight = calendar.midnightOf(calendar.dayOf(minuteOf(yard.yard.now)));
  const steps = session.steps.filter(({ name, at }) => !names.has(name) || minuteOf(at) < midnight);
  return steps.length === 0 ? [] : [{ ...session, steps }];
};

/**
 * What is to be answered at a yard's now, by session: all late work of sessions that are over, of the one under way only
 * what has no place in its list.
 */
export const toAnswer = (yard: YardFile, plan: PlanOfWork, work: PlanOfWork): LateSession[] => {
  const late = lateWork(yard, work);
  const now = minuteOf(yard.yard.now);
  return bySession(yard, late ? lateSteps(late) : []).flatMap((session) => {
    const isOver = session.end === null || session.end <= now;
    return isOver ? [session] : notListed(session, yard, plan);
  });
};

/** The steps of all sessions, or of the one that is named. */
export const stepsOfSession = (sessions: readonly LateSession[], key: string | null): LateStep[] =>
  sessions.filter((session) => key === null || session.key === key).flatMap(({ steps }) => steps);
