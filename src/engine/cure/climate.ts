import type { TemperatureStep } from '../../../shared/temperature.ts';
import { type DayNumber, dayNumber, type Minute } from '../../../shared/time.ts';
import type { Calendar } from '../calendar/calendar.ts';

/** The temperatures a yard expects, as steps at 00:00 of local dates. */
export interface Climate {
  /** Expected mean of a date; null when the yard expects nothing. */
  celsiusOn(day: DayNumber): number | null;
  /** First date on or after `day` that is expected colder than `celsius`; Infinity if none is. */
  nextDayColderThan(celsius: number, day: DayNumber): DayNumber;
  /** By time; the first is from -Infinity, since it holds before its date too. Empty when the yard expects nothing. */
  steps: { from: Minute; celsius: number }[];
}

interface DayStep {
  day: DayNumber;
  celsius: number;
}

/** By date. The first holds from ever on; of two given for one date the later in the file holds from that date on. */
const byDay = (steps: TemperatureStep[]): DayStep[] => {
  const days = steps
    .map((step) => ({ day: dayNumber(step.from), celsius: step.celsius }))
    .sort((a, b) => a.day - b.day);
  if (days[0]) days[0].day = Number.NEGATIVE_INFINITY;
  return days.filter((step, i) => step.day !== days[i + 1]?.day);
};

const lastAtOrBefore = (days: DayStep[], day: DayNumber): number => {
  let [low, high] = [0, days.length - 1];
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (days[middle]!.day <= day) low = middle;
    else high = middle - 1;
  }
  return low;
};

/** For every step the first step from it on that is colder than the limit; one past the last where none is. */
const firstColder = (days: DayStep[], limit: number): number[] => {
  const next = new Array<number>(days.length);
  for (let i = days.length - 1, found = days.length; i >= 0; i--) {
    if (days[i]!.celsius < limit) found = i;
    next[i] = found;
  }
  return next;
};

/**
 * The climate of a yard file's `temperatures`, in any order: each holds from 00:00 of its date until the next, the
 * first one before its date too. Degrees Celsius, dates in the calendar's zone.
 *
 * Example: of a step of 10 °C alone, `climateOf([{ from: '2027-04-01', celsius: 10 }],
 * calendarOf('UTC')).celsiusOn(dayNumber('2027-03-01'))` is 10; colder than 9 °C it never is: `climateOf([{ from:
 * '2027-04-01', celsius: 10 }], calendarOf('UTC')).nextDayColderThan(9, 0)` is `Infinity`.
 */
export const climateOf = (steps: TemperatureStep[], calendar: Calendar): Climate => {
  const days = byDay(steps);
  const colder = new Map<number, number[]>();
  return {
    celsiusOn: (day) => days[lastAtOrBefore(days, day)]?.celsius ?? null,
    nextDayColderThan: (celsius, day) => {
      if (days.length === 0) return Number.POSITIVE_INFINITY;
      let next = colder.get(celsius);
      if (!next) {
        next = firstColder(days, celsius);
        colder.set(celsius, next);
      }
      const step = days[next[lastAtOrBefore(days, day)]!];
      return step ? Math.max(day, step.day) : Number.POSITIVE_INFINITY;
    },
    steps: days.map((step, i) => ({
      from: i === 0 ? Number.NEGATIVE_INFINITY : calendar.midnightOf(step.day),
      celsius: step.celsius,
    })),
  };
};
