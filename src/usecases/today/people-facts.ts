import { minuteOf } from '../../../shared/time.ts';
import type { Calendar } from '../../engine/calendar/calendar.ts';
import { peopleAtWork } from '../../engine/calendar/people-at-work.ts';
import type { Session } from '../../engine/calendar/sessions.ts';
import type { SessionStep } from './session-step.ts';
import type { PersonFacts } from './today-model.ts';

/** Everybody who is there all the while: of opening the yard and clearing up. */
const allThere = ({ windows }: Pick<Session, 'windows'>, start: number, end: number): number =>
  windows.reduce((sum, one) => sum + (one.start <= start && one.end >= end ? one.crew : 0), 0);

const peopleOf = (step: SessionStep, session: Pick<Session, 'windows'>): number => {
  if (step.kind === 'batch' || step.kind === 'strip') return step.people;
  if (step.kind !== 'set up' && step.kind !== 'clear up') return 1;
  return Math.max(1, allThere(session, minuteOf(step.at), minuteOf(step.until)));
};

/** Who is there in a session, and whose each of its steps is, and the minutes to keep pieces wet: nobody has two at once. */
export const peopleFacts = (
  session: Pick<Session, 'windows' | 'from' | 'wetUntil'>,
  steps: readonly SessionStep[],
  { instantText }: Pick<Calendar, 'instantText'>,
): PersonFacts[] => {
  const tasks = steps.map((step) => ({
    ...{ start: minuteOf(step.at), end: minuteOf(step.until) },
    people: peopleOf(step, session),
  }));
  const isWet = session.wetUntil > session.from;
  const wetting = { start: session.from, end: session.wetUntil, people: isWet ? 1 : 0 };
  const wet = { start: instantText(wetting.start), end: instantText(wetting.end) };
  return peopleAtWork(session.windows, [...tasks, wetting]).map(({ start, end, tasks: own }) => ({
    ...{ start: instantText(start), end: instantText(end) },
    steps: own.flatMap((place) => steps[place]?.name ?? []),
    wet: own.includes(tasks.length) ? wet : null,
  }));
};
