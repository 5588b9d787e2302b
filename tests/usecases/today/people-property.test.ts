import { expect, test } from 'vitest';
import { minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { calendarOf } from '../../../src/engine/calendar/calendar.ts';
import { type Session, sessionsOf } from '../../../src/engine/calendar/sessions.ts';
import { planYard } from '../../../src/engine/plan.ts';
import { peopleFacts } from '../../../src/usecases/today/people-facts.ts';
import type { SessionStep } from '../../../src/usecases/today/session-step.ts';
import { sessionSteps } from '../../../src/usecases/today/session-steps.ts';
import { fromClock } from '../../../views/parts/clock-text.ts';
import { stepHours } from '../../../views/today/today-text.ts';
import { yardSeeds } from '../../support/property-seed.ts';
import { randomYard } from '../../support/random-yard.ts';

const YARDS = 5;
const SESSIONS = 5;

const isWork = ({ kind }: SessionStep): boolean => kind !== 'set up' && kind !== 'clear up';
const needed = (step: SessionStep): number => ('people' in step ? step.people : 1);

/** Clock times as they are shown, to be compared: "9:05" comes before "10:00". */
const clock = (text: string): number => Number(text.split(':')[0]) * 60 + Number(text.split(':')[1]);

/** Pairs of steps of which the second begins before the first is over, by the minute or as it is shown. */
const overlaps = (steps: readonly SessionStep[]): string[] =>
  steps.slice(1).flatMap((step, place) => {
    const before = steps[place]!;
    const { from, to } = stepHours(before);
    const sameDay = before.until.slice(0, 10) === step.at.slice(0, 10);
    const early = minuteOf(step.at) < minuteOf(before.until);
    const shownEarly = sameDay && clock(stepHours(step).from) < clock(to ?? from);
    return early || shownEarly ? [`${before.name} until ${fromClock(before.until)}, ${step.name} ${step.at}`] : [];
  });

/** The steps of each mould, in order; those of a batch are its pours, which begin with the batch for whoever sets up. */
const byMould = (steps: readonly SessionStep[]): SessionStep[][] => {
  const moulds = new Map<string, SessionStep[]>();
  for (const step of steps)
    for (const mould of step.kind === 'batch'
      ? step.pours.map((pour) => pour.mould)
      : 'mould' in step
        ? [step.mould]
        : [])
      moulds.set(mould, [...(moulds.get(mould) ?? []), step]);
  return [...moulds.values()];
};

/** What is wrong with the steps of one session. */
const faultsOf = (yard: YardFile, plan: ReturnType<typeof planYard>, session: Session): string[] => {
  const steps = sessionSteps(plan, yard, session, { system: 'metric', waters: new Map() });
  const people = peopleFacts(session, steps, calendarOf(yard.yard.timeZone));
  const named = new Map(steps.map((step) => [step.name, step]));
  const hands = people.map((person) => person.steps.map((name) => named.get(name)!));
  const undone = steps
    .filter(isWork)
    .filter((step) => hands.filter((own) => own.includes(step)).length !== needed(step))
    .map(({ name }) => `${name} is not done by as many as it takes`);
  const wetters = people.filter(({ wet }) => wet !== null);
  const unwetted = wetters.length === (session.wetUntil > session.from ? 1 : 0) ? [] : ['nobody keeps wet, or several'];
  const wetAndWork = wetters.flatMap(({ wet, steps: own }) =>
    own
      .map((name) => named.get(name)!)
      .filter(({ at, until }) => minuteOf(at) < minuteOf(wet!.end) && minuteOf(until) > minuteOf(wet!.start))
      .map(({ name }) => `${name} while pieces are kept wet`),
  );
  return [...undone, ...unwetted, ...wetAndWork, ...hands.flatMap(overlaps), ...byMould(steps).flatMap(overlaps)];
};

test.each(yardSeeds(YARDS, 1))(
  'in yard %i nobody has two steps at once, and no mould, by the minute or as it is written',
  (seed) => {
    const yard = randomYard(seed);
    const plan = planYard(yard);
    const busy = sessionsOf(yard, calendarOf(yard.yard.timeZone))
      .map((session) => ({
        session,
        steps: sessionSteps(plan, yard, session, { system: 'metric', waters: new Map() }),
      }))
      .filter(({ steps }) => steps.some(isWork))
      .slice(0, SESSIONS);
    expect(busy.flatMap(({ session }) => faultsOf(yard, plan, session))).toEqual([]);
  },
);
