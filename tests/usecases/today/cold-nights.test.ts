import { expect, test } from 'vitest';
import { minuteOf } from '../../../shared/time.ts';
import { calendarOf } from '../../../src/engine/calendar/calendar.ts';
import { climateOf } from '../../../src/engine/cure/climate.ts';
import { coldNightsAfter } from '../../../src/usecases/today/cold-nights.ts';
import { smallYard } from '../../support/small-yard.ts';

const calendar = calendarOf('Europe/Dublin');
const mix = smallYard().mixes[0]!;
const lastFill = minuteOf('2027-11-06T11:00:00Z');

const coldBy = (celsius: number, from: string, protectHours = 0) =>
  coldNightsAfter(
    { mix: { ...mix, protectHours }, lastFill },
    climateOf(
      {
        temperatures: [
          { from: '2027-10-01', celsius: 9 },
          { from, celsius },
        ],
      },
      calendar,
    ),
    'metric',
  )?.celsius ?? null;

test.each([
  ['a day of 4 °C on the day itself', 4, '2027-11-06', 0, '4 °C'],
  ['one within the first two nights', 3, '2027-11-08', 0, '3 °C'],
  ['one after them', 3, '2027-11-09', 0, null],
  ['one while a mix is kept from frost for longer', 3, '2027-11-09', 72, '3 °C'],
  ['days of 5 °C', 5, '2027-11-06', 0, null],
])('%s: %d °C from %s', (_what, celsius, from, protectHours, said) => {
  expect(coldBy(celsius, from, protectHours)).toBe(said);
});

test('in US units it is said so, and without any temperature nothing is', () => {
  const cold = climateOf({ temperatures: [{ from: '2027-10-01', celsius: 0 }] }, calendar);
  expect(coldNightsAfter({ mix, lastFill }, cold, 'US')).toEqual({ celsius: '32 °F', byTheHour: false });
  expect(coldNightsAfter({ mix, lastFill }, climateOf({ temperatures: [] }, calendar), 'US')).toBeNull();
});

test('where the hours are known, the coldest of them counts, and a mean that is mild hides no frost', () => {
  const weather = (minCelsius: number, date = '2027-11-07') => ({
    ...{ coldestAt: '06:00', warmestAt: '14:00' },
    days: [{ date, minCelsius, maxCelsius: 15 }],
  });
  const temperatures = [{ from: '2027-10-01', celsius: 9 }];
  const of = (said: ReturnType<typeof weather>) =>
    coldNightsAfter({ mix, lastFill }, climateOf({ temperatures, weather: said }, calendar), 'metric');
  expect(of(weather(-3))).toEqual({ celsius: '-3 °C', byTheHour: true });
  expect(of(weather(2))).toBeNull();
  expect(of(weather(-3, '2027-11-09'))).toBeNull();
});
