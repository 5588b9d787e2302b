import { expect, test } from 'vitest';
import { minuteOf } from '../../../shared/time.ts';
import { calendarOf } from '../../../src/engine/calendar/calendar.ts';
import { coldNightsAfter } from '../../../src/usecases/today/cold-nights.ts';
import { smallYard } from '../../support/small-yard.ts';

const calendar = calendarOf('Europe/Dublin');
const mix = smallYard().mixes[0]!;
const lastFill = minuteOf('2027-11-06T11:00:00Z');

const coldBy = (celsius: number, from: string, protectHours = 0) =>
  coldNightsAfter(
    {
      temperatures: [
        { from: '2027-10-01', celsius: 9 },
        { from, celsius },
      ],
      mix: { ...mix, protectHours },
      lastFill,
    },
    calendar,
    'metric',
  );

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
  const step = { temperatures: [{ from: '2027-10-01', celsius: 0 }], mix, lastFill };
  expect(coldNightsAfter(step, calendar, 'US')).toBe('32 °F');
  expect(coldNightsAfter({ ...step, temperatures: [] }, calendar, 'US')).toBeNull();
});
