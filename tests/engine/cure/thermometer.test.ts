import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Weather } from '../../../shared/temperature.ts';
import { dayNumber } from '../../../shared/time.ts';
import { hoursOf } from '../../../src/engine/cure/day-hours.ts';
import { dayByThermometer } from '../../../src/engine/cure/thermometer.ts';

const DATE = '2027-07-10';
const weather = (...days: Weather['days']): Weather => ({ coldestAt: '05:00', warmestAt: '15:00', days });
const said = { date: DATE, minCelsius: 10, maxCelsius: 22, windKmh: 20 };

/** What the day then says of an hour. */
const hourOf = (day: Weather['days'][number], hour: number, ...others: Weather['days']) =>
  hoursOf(weather(day, ...others)).get(dayNumber(DATE))![hour];

test('a warmer afternoon raises the highest and leaves the night, and what else is known of the day stays', () => {
  // 14:30 is at 0.95 of the way from 5:00 to 15:00: (1 - cos 0.95 pi)/2 = 0.9938 of it, so that 16 °C more than the lowest need 16.1.
  const day = dayByThermometer(weather(said), { date: DATE, clock: '14:20', celsius: 26, mean: 16 });
  expect(day).toMatchObject({ date: DATE, minCelsius: 10, windKmh: 20 });
  expect(hourOf(day, 14)).toBeCloseTo(26, 9);
  expect(day.maxCelsius).toBeCloseTo(10 + 16 / ((1 - Math.cos((Math.PI * 9.5) / 10)) / 2), 9);
});

test('a colder morning lowers the lowest and leaves the afternoon', () => {
  const day = dayByThermometer(weather(said), { date: DATE, clock: '06:00', celsius: 4, mean: 16 });
  expect(day.maxCelsius).toBe(22);
  expect(hourOf(day, 6)).toBeCloseTo(4, 9);
});

test('where an end has little say in the hour, both move alike', () => {
  const day = dayByThermometer(weather(said), { date: DATE, clock: '07:00', celsius: 18, mean: 16 });
  expect(day.maxCelsius - day.minCelsius).toBeCloseTo(12, 9);
  expect(hourOf(day, 7)).toBeCloseTo(18, 9);
});

test('without a forecast the day begins as its mean, 4 °C either way; with no mean as what was read', () => {
  const day = dayByThermometer(weather(), { date: DATE, clock: '15:00', celsius: 26, mean: 16 });
  expect(day.minCelsius).toBe(12);
  expect(hourOf(day, 15)).toBeCloseTo(26, 9);
  const unknown = dayByThermometer(weather(), { date: DATE, clock: '10:00', celsius: 18, mean: null });
  expect(hourOf(unknown, 10)).toBeCloseTo(18, 9);
});

test('the hour is as it was read, the lowest never above the highest, whatever the time and the days beside', () => {
  const celsius = fc.double({ min: -20, max: 40, noNaN: true });
  const ends = fc.tuple(celsius, celsius).map(([a, b]) => ({ minCelsius: Math.min(a, b), maxCelsius: Math.max(a, b) }));
  const beside = fc.option(ends);
  fc.assert(
    fc.property(ends, beside, beside, celsius, fc.integer({ min: 0, max: 21 }), (of, before, after, read, hour) => {
      const others = [
        ...(before ? [{ date: '2027-07-09', ...before }] : []),
        ...(after ? [{ date: '2027-07-11', ...after }] : []),
      ];
      const known = weather({ date: DATE, ...of }, ...others);
      const clock = `${String(hour).padStart(2, '0')}:10`;
      const day = dayByThermometer(known, { date: DATE, clock, celsius: read, mean: null });
      expect(day.minCelsius).toBeLessThanOrEqual(day.maxCelsius + 1e-9);
      expect(hourOf(day, hour, ...others)).toBeCloseTo(read, 9);
    }),
    { numRuns: 200 },
  );
});

test('late at night, when the next morning has more of a say, the day is moved no further than it is off', () => {
  const after = { date: '2027-07-11', minCelsius: 12, maxCelsius: 24 };
  const day = dayByThermometer(weather(said, after), { date: DATE, clock: '23:00', celsius: 20, mean: 16 });
  // Half past eleven is 0.607 of the way from 15:00 to 5:00: (1 - cos 0.607 pi)/2 = 0.665 of it falls to the next lowest.
  const expected = 22 + (12 - 22) * 0.665;
  expect(day.maxCelsius).toBeCloseTo(22 + (20 - expected) * 2, 1);
  expect(hourOf(day, 23, after)).toBeGreaterThan(expected);
});
