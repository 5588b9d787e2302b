import type { TemperatureStep, Weather } from '../../../shared/temperature.ts';
import { type DayNumber, dayNumber, type Minute } from '../../../shared/time.ts';
import type { Calendar } from '../calendar/calendar.ts';
import { hoursOf } from './day-hours.ts';

/** A temperature in °C from a minute until the next step; null: nobody expects any. */
interface ClimateStep {
  from: Minute;
  celsius: number | null;
}

/** The temperatures a yard expects, as steps: at 00:00 of local dates, and at every full hour where the weather of a date is known. */
export interface Climate {
  /** Expected mean of a date (of one by the hour, half way between lowest and highest); null when the yard expects nothing. */
  celsiusOn(day: DayNumber): number | null;
  /** Expected at a minute; null when the yard expects nothing then. */
  celsiusAt(minute: Minute): number | null;
  /** First minute from one on at which it is expected colder than `celsius`: that very minute, or the start of a step; Infinity if none is. */
  nextColderThan(celsius: number, minute: Minute): Minute;
  /** The same for hotter than `celsius`. */
  nextHotterThan(celsius: number, minute: Minute): Minute;
  /** Start of the step that holds at a minute. */
  stepFrom(minute: Minute): Minute;
  /** Start of the next step after a minute; Infinity after the last. */
  nextStep(minute: Minute): Minute;
  /** By time; the first is from -Infinity, since it holds before its date too. */
  steps: ClimateStep[];
}

/** A step that is touched, and how long it holds in all; the first holds from ever on. */
interface StepTouched {
  celsius: number | null;
  minutes: number;
}

/** What a yard says of its temperatures. */
export interface Expected {
  temperatures: TemperatureStep[];
  weather?: Weather | undefined;
}

interface DayStep {
  day: DayNumber;
  celsius: number | null;
}

/** By date. The first holds from ever on; of two given for one date the later in the file holds from that date on. */
const byDay = (steps: TemperatureStep[]): DayStep[] => {
  const days: DayStep[] = steps
    .map((step) => ({ day: dayNumber(step.from), celsius: step.celsius }))
    .sort((a, b) => a.day - b.day);
  if (days.length === 0) return [{ day: Number.NEGATIVE_INFINITY, celsius: null }];
  days[0]!.day = Number.NEGATIVE_INFINITY;
  return days.filter((step, i) => step.day !== days[i + 1]?.day);
};

/** The last of a rising list that is at or before a value; the first where none is. */
const lastAtOrBefore = <T>(list: readonly T[], of: (entry: T) => number, value: number): number => {
  let [low, high] = [0, list.length - 1];
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (of(list[middle]!) <= value) low = middle;
    else high = middle - 1;
  }
  return low;
};

const dayOf = (step: DayStep) => step.day;
const fromOf = (step: ClimateStep) => step.from;

/** Means and hours as one list: a date by the hour has its hours alone, the date after it has its mean again. */
const allSteps = (means: DayStep[], hours: Map<DayNumber, number[]>, calendar: Calendar): ClimateStep[] => {
  const meanOn = (day: DayNumber) => means[lastAtOrBefore(means, dayOf, day)]!.celsius;
  const days = new Set([...means.slice(1).map(dayOf), ...[...hours.keys()].flatMap((day) => [day, day + 1])]);
  const steps = [...days]
    .sort((a, b) => a - b)
    .flatMap((day): ClimateStep[] => {
      const ofDay = hours.get(day);
      if (!ofDay) return [{ from: calendar.midnightOf(day), celsius: meanOn(day) }];
      return ofDay.map((celsius, hour) => ({ from: calendar.minuteAt(day, hour * 60), celsius }));
    });
  const all = [{ from: Number.NEGATIVE_INFINITY, celsius: means[0]!.celsius }, ...steps];
  // An hour that the clock leaps over lasts no time: the one after it begins at the same instant.
  return all.filter((step, i) => step.from !== all[i + 1]?.from);
};

/** For every step the first step from it on that is as asked for; one past the last where none is. */
const firstSuch = (steps: readonly ClimateStep[], is: (celsius: number) => boolean): number[] => {
  const next = new Array<number>(steps.length);
  for (let i = steps.length - 1, found = steps.length; i >= 0; i--) {
    const { celsius } = steps[i]!;
    if (celsius !== null && is(celsius)) found = i;
    next[i] = found;
  }
  return next;
};

/** The steps that a stretch of time touches, both ends included. */
export const stepsTouched = ({ stepFrom, nextStep, celsiusAt }: Climate, from: Minute, to: Minute): StepTouched[] => {
  const touched: StepTouched[] = [];
  for (let at = from; at <= to; at = nextStep(at))
    touched.push({ celsius: celsiusAt(at), minutes: nextStep(at) - stepFrom(at) });
  return touched;
};

const keptBy = <T>(make: (limit: number) => T): ((limit: number) => T) => {
  const known = new Map<number, T>();
  return (limit) => {
    let value = known.get(limit);
    if (value === undefined) {
      value = make(limit);
      known.set(limit, value);
    }
    return value;
  };
};

/**
 * The climate of a yard file: its `temperatures`, in any order, each from 00:00 of its date until the next, the first one
 * before its date too, and by the hour the dates of its `weather` (see `hoursOf`). Degrees Celsius, dates in the calendar's zone.
 *
 * Example: of a step of 10 °C alone, `climateOf({ temperatures: [{ from: '2027-04-01', celsius: 10 }] },
 * calendarOf('UTC')).celsiusOn(dayNumber('2027-03-01'))` is 10; colder than 9 °C it never is: `climateOf({ temperatures: [{
 * from: '2027-04-01', celsius: 10 }] }, calendarOf('UTC')).nextColderThan(9, 0)` is `Infinity`.
 */
export const climateOf = ({ temperatures, weather }: Expected, calendar: Calendar): Climate => {
  const means = byDay(temperatures);
  const ends = new Map(weather?.days.map((day) => [dayNumber(day.date), (day.minCelsius + day.maxCelsius) / 2]));
  const steps = allSteps(means, weather ? hoursOf(weather) : new Map(), calendar);
  const at = (minute: Minute) => lastAtOrBefore(steps, fromOf, minute);
  const colder = keptBy((limit) => firstSuch(steps, (celsius) => celsius < limit));
  const hotter = keptBy((limit) => firstSuch(steps, (celsius) => celsius > limit));
  const next = (found: number[], minute: Minute) => {
    const step = steps[found[at(minute)]!];
    return step ? Math.max(minute, step.from) : Number.POSITIVE_INFINITY;
  };
  return {
    celsiusOn: (day) => ends.get(day) ?? means[lastAtOrBefore(means, dayOf, day)]!.celsius,
    celsiusAt: (minute) => steps[at(minute)]!.celsius,
    nextColderThan: (celsius, minute) => next(colder(celsius), minute),
    nextHotterThan: (celsius, minute) => next(hotter(celsius), minute),
    stepFrom: (minute) => steps[at(minute)]!.from,
    nextStep: (minute) => steps[at(minute) + 1]?.from ?? Number.POSITIVE_INFINITY,
    steps,
  };
};
