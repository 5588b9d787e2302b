import { expect, test } from 'vitest';
import { forecastAnswer } from '../../../shared/forecast.ts';
import { daysOfForecast } from '../../../src/engine/cure/forecast.ts';
import { dayOf, forecastOf } from '../../support/forecast-answer.ts';

const DATES = ['2027-04-08', '2027-04-09', '2027-04-10', '2027-04-11'];
const days = (...hours: Parameters<typeof forecastOf>[0]) =>
  daysOfForecast(forecastAnswer.parse(forecastOf(hours)), 'UTC', DATES);

test('a day by the hour has its lowest and highest, strongest wind, driest air and all its rain', () => {
  expect(days(...dayOf('2027-04-09', 4, 16))).toEqual([
    { date: '2027-04-09', minCelsius: 4, maxCelsius: 16, windKmh: 18, humidityPercent: 45, rainMm: 2 },
  ]);
});

test('a day of which the cold morning or the warm afternoon is missing is left out', () => {
  const all = dayOf('2027-04-09', 4, 16);
  expect(days(...all.slice(9))).toEqual([]);
  expect(days(...all.slice(0, 12))).toEqual([]);
  expect(days(...all.slice(6))).toHaveLength(1);
});

test('six hours at a time have ends of their own, and rain that is not counted twice', () => {
  const six = (hour: string, celsius: number, min: number, max: number) => ({
    ...{ time: `2027-04-10T${hour}:00:00Z`, celsius, six: { min, max, rain: 1.25 } },
  });
  const hourly = { time: '2027-04-10T00:00:00Z', celsius: 9, rain: 0.5, six: { min: -20, max: 40, rain: 9 } };
  expect(days(hourly, six('06', 5, 3, 10), six('12', 12, 11, 14), six('18', 9, 7, 11))).toEqual([
    { date: '2027-04-10', minCelsius: 3, maxCelsius: 14, rainMm: 4.3 },
  ]);
});

test('days are those of the zone', () => {
  const answer = forecastAnswer.parse(forecastOf([...dayOf('2027-04-09', 4, 16), ...dayOf('2027-04-10', 0, 10)]));
  // In Honolulu, ten hours behind, the 9th begins at 10:00 UTC and ends at 10:00 UTC of the 10th.
  expect(daysOfForecast(answer, 'Pacific/Honolulu', ['2027-04-09'])).toMatchObject([{ minCelsius: 0, maxCelsius: 16 }]);
});

test.each([[{}], [{ properties: { timeseries: [{ time: 'soon', data: {} }] } }]])('%j is no forecast', (answer) => {
  expect(forecastAnswer.safeParse(answer).success).toBe(false);
});
