import type { Weather, WeatherDay } from '../../../shared/temperature.ts';
import { clockMinutes, type DayNumber, dayNumber } from '../../../shared/time.ts';

const DAY_MINUTES = 1440;
const HOURS = 24;
const HALF_AN_HOUR = 30;

/** From one figure to another at a share of the time: half a cosine, flat at both ends. */
const between = (from: number, to: number, share: number): number =>
  from + ((to - from) * (1 - Math.cos(Math.PI * share))) / 2;

interface Beside {
  before: WeatherDay;
  of: WeatherDay;
  after: WeatherDay;
}

/** Expected °C at a minute of the day's clock. */
const celsiusAt = (clock: number, { before, of, after }: Beside, coldest: number, warmest: number): number => {
  const night = coldest + DAY_MINUTES - warmest;
  if (clock < coldest) return between(before.maxCelsius, of.minCelsius, (clock + DAY_MINUTES - warmest) / night);
  if (clock <= warmest) return between(of.minCelsius, of.maxCelsius, (clock - coldest) / (warmest - coldest));
  return between(of.maxCelsius, after.minCelsius, (clock - warmest) / night);
};

/**
 * The expected temperature of each hour of each date that the weather has, in °C: 24 figures a date, each as it is half an hour
 * after the full hour. Lowest and highest are met at the yard's own times; between them the temperature follows half a cosine
 * (the usual sine of a day between its minimum and maximum: common practice, no source), and at night it goes on to the next date's
 * lowest where that is known. No cure is certified by it.
 *
 * Example: from 10 °C at 05:00 to 26 °C at 15:00 it is 18 °C half way; the hour from 9:00 has 9:30, at 0.45 of the way: 16.75 °C.
 */
export const hoursOf = ({ coldestAt, warmestAt, days }: Weather): Map<DayNumber, number[]> => {
  const byDay = new Map(days.map((day) => [dayNumber(day.date), day]));
  const [coldest, warmest] = [clockMinutes(coldestAt), clockMinutes(warmestAt)];
  return new Map(
    [...byDay].map(([day, of]) => {
      const beside = { before: byDay.get(day - 1) ?? of, of, after: byDay.get(day + 1) ?? of };
      const hour = (_: unknown, h: number) => celsiusAt(h * 60 + HALF_AN_HOUR, beside, coldest, warmest);
      return [day, Array.from({ length: HOURS }, hour)];
    }),
  );
};
