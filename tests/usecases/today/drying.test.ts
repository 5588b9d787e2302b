import { expect, test } from 'vitest';
import { minuteOf } from '../../../shared/time.ts';
import { calendarOf } from '../../../src/engine/calendar/calendar.ts';
import { climateOf } from '../../../src/engine/cure/climate.ts';
import { dryingOf } from '../../../src/usecases/today/drying.ts';

const calendar = calendarOf('Europe/Dublin');
const at = (clock: string) => minuteOf(`2027-07-10T${clock}:00+01:00`);

const dries = (day: { windKmh?: number; humidityPercent?: number }, from: string, to: string, maxCelsius = 30) => {
  const days = [{ date: '2027-07-10', minCelsius: 14, maxCelsius, ...day }];
  const weather = { coldestAt: '05:00', warmestAt: '15:00', days };
  const climate = climateOf({ temperatures: [], weather }, calendar);
  return dryingOf({ weather, filled: { from: at(from), to: at(to) } }, climate, calendar);
};

// Uno with mortar as warm as the air, by hand: at 29.9 °C, 40 %, 20 km/h 5 x 0.6 x 47.9^2.5 x 24e-6 = 1.14 kg/m² an hour.
test('a dry wind on a hot afternoon dries at once; the same wind in the morning does soon, or not', () => {
  expect(dries({ windKmh: 20, humidityPercent: 40 }, '14:00', '14:20')).toBe('atOnce');
  // From 9 to 10 and the hour after: at 10:30 24.5 °C come to 0.83.
  expect(dries({ windKmh: 20, humidityPercent: 40 }, '09:30', '09:50')).toBe('soon');
  // 6:30, and 7:30 of the hour after, 16.3 °C: 0.51 at 40 %, 0.25 at 70 %.
  expect(dries({ windKmh: 20, humidityPercent: 70 }, '06:00', '06:20')).toBeNull();
});

test('nothing is said where wind or damp are not known, nor of another day', () => {
  expect(dries({ windKmh: 20 }, '14:00', '14:20')).toBeNull();
  expect(dries({ humidityPercent: 5 }, '14:00', '14:20')).toBeNull();
  const climate = climateOf({ temperatures: [] }, calendar);
  expect(
    dryingOf({ weather: undefined, filled: { from: at('14:00'), to: at('14:20') } }, climate, calendar),
  ).toBeNull();
});
