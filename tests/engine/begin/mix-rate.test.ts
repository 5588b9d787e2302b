import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { mixRate } from '../../../src/engine/begin/mix-rate.ts';
import { calendarOf } from '../../../src/engine/calendar/calendar.ts';
import { ageingOf } from '../../../src/engine/cure/age.ts';
import { climateOf } from '../../../src/engine/cure/climate.ts';

/** When a mix of this rate can be stripped on a day of one temperature throughout. */
const strippedAfter = (celsius: number, rate: { activationKelvin: number; demouldMinutes: number }): number =>
  ageingOf(
    { ...rate, referenceCelsius: 20 },
    climateOf({ temperatures: [{ from: '2027-01-01', celsius }] }, calendarOf('UTC')),
  ).whenAged(0, rate.demouldMinutes);

const rateOf = (...asked: Parameters<typeof mixRate>) => {
  const rate = mixRate(...asked);
  if (!rate.ok) throw new Error(rate.reason);
  return rate;
};

describe('the rate of a mix from a cold and a warm day', () => {
  // ln(180/90) / (1/283.15 - 1/293.15) = 0.693147 / 0.000120474 = 5753.5, printed by hand to the whole kelvin.
  test('twice as long at 10 °C as at 20 °C', () => {
    const rate = rateOf({ celsius: 10, minutes: 180 }, { celsius: 20, minutes: 90 }, 20);
    expect(rate.activationKelvin).toBe(5753);
    expect(rate.demouldMinutes).toBe(90);
  });

  // ASTM C1074, eq 2, with Q 5000 K and 20 °C: a day at 10 °C counts exp(-5000 (1/283.15 - 1/293.15)) = 0.5475, and one
  // at 30 °C 1.7553.
  test('takes back the factors of the published form', () => {
    const rate = rateOf({ celsius: 10, minutes: 10_000 / 0.5475 }, { celsius: 30, minutes: 10_000 / 1.7553 }, 20);
    expect(Math.abs(rate.activationKelvin - 5000)).toBeLessThanOrEqual(1);
    expect(Math.abs(rate.demouldMinutes - 10_000)).toBeLessThanOrEqual(2);
  });

  test('a mix that does not mind the weather has no activation', () => {
    expect(rateOf({ celsius: 5, minutes: 1320 }, { celsius: 25, minutes: 1320 }, 20)).toMatchObject({
      activationKelvin: 0,
      demouldMinutes: 1320,
    });
  });

  test.each([
    ['the same temperature', { celsius: 15, minutes: 180 }, { celsius: 15, minutes: 90 }, 'coldCelsius'],
    ['the days mixed up', { celsius: 20, minutes: 180 }, { celsius: 10, minutes: 90 }, 'coldCelsius'],
    ['quicker on the cold day', { celsius: 10, minutes: 60 }, { celsius: 20, minutes: 90 }, 'coldMinutes'],
    [
      'a hundred times as long for a degree',
      { celsius: 19, minutes: 9000 },
      { celsius: 20, minutes: 90 },
      'coldMinutes',
    ],
  ])('refuses %s, at its figure', (_what, cold, warm, at) => {
    expect(mixRate(cold, warm, 20)).toMatchObject({ ok: false, at });
  });

  test('a piece counts as ready when it was on either day, to the minute of rounding', () => {
    const day = (from: number, to: number) => fc.integer({ min: from, max: to });
    fc.assert(
      fc.property(
        day(-5, 14),
        day(15, 35),
        day(20, 400),
        fc.double({ min: 1, max: 6, noNaN: true }),
        (cold, warm, minutes, longer) => {
          const coldMinutes = Math.round(minutes * longer);
          const rate = mixRate({ celsius: cold, minutes: coldMinutes }, { celsius: warm, minutes }, 20);
          fc.pre(rate.ok);
          const late = [strippedAfter(cold, rate) - coldMinutes, strippedAfter(warm, rate) - minutes];
          // One minute at 20 °C, rounded up, is at most as many minutes of the cold day as that is longer than 20 °C.
          const slack = 2 + Math.max(1, strippedAfter(cold, rate) / rate.demouldMinutes);
          for (const over of late) expect(over).toBeGreaterThanOrEqual(-1);
          for (const over of late) expect(over).toBeLessThanOrEqual(slack);
        },
      ),
    );
  });
});
