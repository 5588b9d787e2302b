import type { Weather, WeatherDay } from '../../../shared/temperature.ts';
import { clockMinutes, dayNumber } from '../../../shared/time.ts';
import { hoursOf } from './day-hours.ts';

/** From a day's mean to its lowest and its highest where nobody said either, in °C: half of a usual day's swing (common practice, no source). */
const HALF_A_SWING = 4;

/** One end of a day is moved only where it has at least half a say in the hour, or it would leap for a small difference. */
const HALF_A_SAY = 0.5;

/** A thermometer that was read: °C at a clock time of a date. `mean`: what is expected of the date in °C; null where nothing is. */
export interface ThermometerRead {
  date: string;
  clock: string;
  celsius: number;
  mean: number | null;
}

/**
 * The day of a weather as a thermometer corrects it: its hour is as warm as was read. A warmer hour makes the day's highest
 * higher and leaves its lowest, a colder one the other way round, so that no night gets warmer by a hot afternoon; where that end has
 * little say in the hour both ends move alike. Without a forecast the day begins as its mean, 4 °C either way. In °C, for planning only.
 *
 * Example: 26 °C at 15:00, the warmest, of a day of 10 to 22 °C makes it 10 to 26 °C (the hour is as at 15:30, so a little more).
 */
export const dayByThermometer = (weather: Weather, { date, clock, celsius, mean }: ThermometerRead): WeatherDay => {
  const middle = mean ?? celsius;
  const said = weather.days.find((day) => day.date === date);
  const day = said ?? { date, minCelsius: middle - HALF_A_SWING, maxCelsius: middle + HALF_A_SWING };
  const hour = Math.floor(clockMinutes(clock) / 60);
  const others = weather.days.filter((one) => one.date !== date);
  // What an hour is expected to be is a sum of what both ends, and the days beside, have a say in.
  const at = (minCelsius: number, maxCelsius: number): number => {
    const of = { ...weather, days: [...others, { ...day, minCelsius, maxCelsius }] };
    return hoursOf(of).get(dayNumber(date))![hour]!;
  };
  const none = at(0, 0);
  const [lowSays, highSays] = [at(1, 0) - none, at(0, 1) - none];
  const off = celsius - at(day.minCelsius, day.maxCelsius);
  const moved = (low: number, high: number): WeatherDay => ({
    ...day,
    minCelsius: day.minCelsius + low,
    maxCelsius: day.maxCelsius + high,
  });
  if (off >= 0 && highSays >= HALF_A_SAY) return moved(0, off / highSays);
  if (off <= 0 && lowSays >= HALF_A_SAY) return moved(off / lowSays, 0);
  const both = off / Math.max(HALF_A_SAY, lowSays + highSays);
  return moved(both, both);
};
