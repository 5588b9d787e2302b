import { type Minute, minuteOf } from '../../../shared/time.ts';
import type { UnitSystem } from '../../../shared/units.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import { climateOf } from '../../engine/cure/climate.ts';
import { rainText } from '../../engine/units/rain.ts';
import { temperatureSaid } from '../../engine/units/temperature.ts';
import type { SessionHours } from './hours-facts.ts';
import type { SessionStep } from './session-step.ts';

/** How warm it is taken to be just now, in the yard's units; null where nothing is expected. `byTheHour`: not by a day's mean. */
export interface WarmthFacts {
  expected: string | null;
  byTheHour: boolean;
}

/** Rain that is expected on the day of a session, in the yard's units. */
export interface RainFacts {
  date: string;
  amount: string;
}

/** A day with less is no wet day (the usual bound of climate statistics, from memory). In mm. */
const WET_DAY_MM = 1;

const saidOf = ({ weather }: YardFile, date: string) => weather?.days.find((day) => day.date === date);

/** How warm it is taken to be while something is still to be mixed today; null where nothing is. */
export const warmthNow = (
  yard: YardFile,
  { session, steps }: { session: SessionHours | null; steps: readonly SessionStep[] },
  { day, now, system }: { day: string; now: Minute; system: UnitSystem },
): WarmthFacts | null => {
  if (session?.date !== day) return null;
  if (!steps.some((step) => step.kind === 'batch' && minuteOf(step.mixEnd) > now)) return null;
  const celsius = climateOf(yard, calendarOf(yard.yard.timeZone)).celsiusAt(now);
  const expected = celsius === null ? null : temperatureSaid(celsius, system);
  return { expected, byTheHour: saidOf(yard, day) !== undefined };
};

/** Rain on the day of a session in which something is mixed, or null. */
export const rainOnSession = (
  yard: YardFile,
  { session, steps }: { session: SessionHours | null; steps: readonly SessionStep[] },
  system: UnitSystem,
): RainFacts | null => {
  if (!session || !steps.some(({ kind }) => kind === 'batch')) return null;
  const mm = saidOf(yard, session.date)?.rainMm ?? 0;
  return mm < WET_DAY_MM ? null : { date: session.date, amount: rainText(mm, system) };
};
