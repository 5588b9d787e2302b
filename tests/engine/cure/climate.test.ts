import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dateOfDay, dayNumber, minuteOf } from '../../../shared/time.ts';
import { calendarOf } from '../../../src/engine/calendar/calendar.ts';
import { climateOf } from '../../../src/engine/cure/climate.ts';
import { calendar as auditCalendar, weather } from '../../contract/audit-plan.mjs';
import { dateBetween } from '../../support/hours-yard.ts';

const dublin = calendarOf('Europe/Dublin');
const midnight = (date: string) => dublin.midnightOf(dayNumber(date));
const spring = climateOf(
  {
    temperatures: [
      { from: '2027-05-01', celsius: 13 },
      { from: '2027-04-01', celsius: 4 },
      { from: '2027-04-20', celsius: 9 },
    ],
  },
  dublin,
);

describe('expected temperatures', () => {
  it('hold from their date until the next, in any order of the file, and the first before its date too', () => {
    const on = ['2020-01-01', '2027-04-01', '2027-04-19', '2027-04-20', '2027-04-30', '2027-05-01', '2040-01-01'];
    expect(on.map((date) => spring.celsiusOn(dayNumber(date)))).toEqual([4, 4, 4, 9, 9, 13, 13]);
  });
  it('step at 00:00 in the yard’s zone, which is on summer time', () => {
    expect(spring.steps).toEqual([
      { from: Number.NEGATIVE_INFINITY, celsius: 4 },
      { from: minuteOf('2027-04-20T00:00:00+01:00'), celsius: 9 },
      { from: minuteOf('2027-05-01T00:00:00+01:00'), celsius: 13 },
    ]);
  });
  it('are unknown where the file has none', () => {
    const none = climateOf({ temperatures: [] }, dublin);
    expect(none.celsiusOn(dayNumber('2027-04-01'))).toBeNull();
    expect(none.nextColderThan(100, 0)).toBe(Number.POSITIVE_INFINITY);
    expect(none.steps).toEqual([{ from: Number.NEGATIVE_INFINITY, celsius: null }]);
  });
  it('are the later in the file where two have one date', () => {
    const twice = [7, 3, 6].map((celsius, i) => ({ from: i === 0 ? '2027-03-01' : '2027-04-01', celsius }));
    const climate = climateOf({ temperatures: twice }, dublin);
    expect(climate.celsiusOn(dayNumber('2027-04-01'))).toBe(6);
    expect(climate.nextColderThan(5, midnight('2027-03-01'))).toBe(Number.POSITIVE_INFINITY);
  });
});

describe('the next colder time', () => {
  it('is the day itself when that is colder, and never one that is just as warm', () => {
    expect(spring.nextColderThan(5, midnight('2027-04-10'))).toBe(midnight('2027-04-10'));
    expect(spring.nextColderThan(4, midnight('2027-04-10'))).toBe(Number.POSITIVE_INFINITY);
  });
  it('is the first day of the step that is colder', () => {
    const autumn = climateOf(
      {
        temperatures: [
          { from: '2027-09-01', celsius: 14 },
          { from: '2027-10-15', celsius: 8 },
          { from: '2027-12-01', celsius: 3 },
        ],
      },
      dublin,
    );
    expect(autumn.nextColderThan(5, midnight('2027-09-20'))).toBe(midnight('2027-12-01'));
    expect(autumn.nextColderThan(10, midnight('2027-09-20'))).toBe(midnight('2027-10-15'));
  });
});

const anySteps = fc.array(
  fc.record({ from: dateBetween('2026-10-01', '2028-03-01'), celsius: fc.integer({ min: -10, max: 35 }) }),
  {
    minLength: 1,
    maxLength: 30,
  },
);

it('agrees with the audit and with looking at each day in turn', () => {
  const days = fc.integer({ min: dayNumber('2026-09-01'), max: dayNumber('2028-04-01') });
  fc.assert(
    fc.property(anySteps, days, fc.integer({ min: -12, max: 37 }), (steps, day, celsius) => {
      const climate = climateOf({ temperatures: steps }, dublin);
      const audit = weather({ temperatures: steps }, auditCalendar('Europe/Dublin'));
      expect(climate.celsiusOn(day)).toBe(audit!.at(auditCalendar('Europe/Dublin').minuteAt(dateOfDay(day), '00:00')));
      let next = day;
      while (climate.celsiusOn(next)! >= celsius && next < dayNumber('2028-04-02')) next++;
      expect(climate.nextColderThan(celsius, dublin.midnightOf(day))).toBe(
        climate.celsiusOn(next)! < celsius ? dublin.midnightOf(next) : Number.POSITIVE_INFINITY,
      );
    }),
    { numRuns: 500 },
  );
});

describe('days by the hour', () => {
  const days = [
    { date: '2027-04-10', minCelsius: 10, maxCelsius: 26 },
    { date: '2027-04-11', minCelsius: 4, maxCelsius: 12 },
  ];
  const known = { coldestAt: '05:00', warmestAt: '15:00', days };
  const climate = climateOf({ temperatures: [{ from: '2027-04-01', celsius: 9 }], weather: known }, dublin);
  const at = (clock: string, date = '2027-04-10') => climate.celsiusAt(minuteOf(`${date}T${clock}:00+01:00`));

  it('rise from the coldest to the warmest by half a cosine, and fall towards the next day’s coldest', () => {
    // 9:30 is 4.5 of 10 hours after 5:00: 10 + 8 (1 - cos(0.45 pi)) = 16.7485. 14:30: 10 + 8 (1 - cos(0.95 pi)) = 25.9015.
    expect(at('09:00')).toBeCloseTo(16.7485, 4);
    expect(at('09:59')).toBe(at('09:00'));
    expect(at('14:00')).toBeCloseTo(25.9015, 4);
    // From 26 °C at 15:00 to 4 °C at 5:00, 14 hours; 23:30 is 8.5 of them: 26 - 11 (1 - cos(8.5 pi / 14)) = 11.3669.
    expect(at('23:00')).toBeCloseTo(11.3669, 4);
    // The night before is of no known day: from this day's own 26 °C to 10 °C; 0:30 is 9.5 of 14 hours.
    expect(at('00:00')).toBeCloseTo(26 - 8 * (1 - Math.cos((9.5 * Math.PI) / 14)), 9);
    expect(at('02:00', '2027-04-11')).toBeCloseTo(26 - 11 * (1 - Math.cos((11.5 * Math.PI) / 14)), 9);
  });
  it('have half way between the two as their mean, and the days beside them have what they had', () => {
    expect(climate.celsiusOn(dayNumber('2027-04-10'))).toBe(18);
    expect([at('23:59', '2027-04-09'), at('00:00', '2027-04-12')]).toEqual([9, 9]);
  });
  it('are asked for the first hour that is colder, or hotter', () => {
    const from = minuteOf('2027-04-10T06:00:00+01:00');
    // 13:30: 10 + 8 (1 - cos(0.85 pi)) = 25.13; 12:30: 23.66.
    expect(climate.nextHotterThan(25, from)).toBe(minuteOf('2027-04-10T13:00:00+01:00'));
    expect(climate.nextHotterThan(26, from)).toBe(Number.POSITIVE_INFINITY);
    expect(climate.nextColderThan(4.2, from)).toBe(minuteOf('2027-04-11T04:00:00+01:00'));
  });
  it('begin each hour when the clock shows it, on a day of 23 hours too', () => {
    const spring = [{ date: '2027-03-28', minCelsius: 0, maxCelsius: 12 }];
    const { steps } = climateOf({ temperatures: [], weather: { ...known, days: spring } }, dublin);
    const hours = steps.slice(1).map(({ from }) => dublin.instantText(from).slice(11, 16));
    expect(hours.slice(0, 3)).toEqual(['00:00', '02:00', '03:00']);
    expect(steps).toHaveLength(1 + 23 + 1);
    expect([steps[0]!.celsius, steps.at(-1)!.celsius]).toEqual([null, null]);
  });
});

const anyWeather = fc
  .uniqueArray(dateBetween('2027-03-20', '2027-04-05'), { maxLength: 12 })
  .chain((dates) =>
    fc.tuple(
      ...dates.map((date) =>
        fc
          .tuple(fc.integer({ min: -10, max: 25 }), fc.integer({ min: 0, max: 20 }))
          .map(([minCelsius, swing]) => ({ date, minCelsius, maxCelsius: minCelsius + swing })),
      ),
    ),
  )
  .map((days) => ({ coldestAt: '04:40', warmestAt: '14:15', days }));

it('has the hours that the audit has, whatever days are known', () => {
  const few = fc.array(
    fc.record({ from: dateBetween('2027-03-15', '2027-04-10'), celsius: fc.integer({ min: -9, max: 30 }) }),
    {
      maxLength: 4,
    },
  );
  fc.assert(
    fc.property(few, anyWeather, (temperatures, known) => {
      const audit = weather({ temperatures, weather: known }, auditCalendar('Europe/Dublin'));
      const { steps } = climateOf({ temperatures, weather: known }, dublin);
      expect(steps.map(({ from }) => from)).toEqual(audit?.steps.map(({ from }) => from) ?? [Number.NEGATIVE_INFINITY]);
      for (const [i, { celsius }] of steps.entries())
        if (celsius === null) expect(audit?.steps[i]?.celsius ?? null).toBeNull();
        else expect(celsius).toBeCloseTo(audit!.steps[i]!.celsius!, 9);
    }),
    { numRuns: 100 },
  );
});
