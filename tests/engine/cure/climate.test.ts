import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dateOfDay, dayNumber, minuteOf } from '../../../shared/time.ts';
import { calendarOf } from '../../../src/engine/calendar/calendar.ts';
import { climateOf } from '../../../src/engine/cure/climate.ts';
import { calendar as auditCalendar, weather } from '../../contract/audit-plan.mjs';
import { dateBetween } from '../../support/hours-yard.ts';

const dublin = calendarOf('Europe/Dublin');
const spring = climateOf(
  [
    { from: '2027-05-01', celsius: 13 },
    { from: '2027-04-01', celsius: 4 },
    { from: '2027-04-20', celsius: 9 },
  ],
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
    const none = climateOf([], dublin);
    expect(none.celsiusOn(dayNumber('2027-04-01'))).toBeNull();
    expect(none.nextDayColderThan(100, 0)).toBe(Number.POSITIVE_INFINITY);
    expect(none.steps).toEqual([]);
  });
  it('are the later in the file where two have one date', () => {
    const twice = [7, 3, 6].map((celsius, i) => ({ from: i === 0 ? '2027-03-01' : '2027-04-01', celsius }));
    const climate = climateOf(twice, dublin);
    expect(climate.celsiusOn(dayNumber('2027-04-01'))).toBe(6);
    expect(climate.nextDayColderThan(5, dayNumber('2027-03-01'))).toBe(Number.POSITIVE_INFINITY);
  });
});

describe('the next colder day', () => {
  it('is the day itself when that is colder, and never one that is just as warm', () => {
    expect(spring.nextDayColderThan(5, dayNumber('2027-04-10'))).toBe(dayNumber('2027-04-10'));
    expect(spring.nextDayColderThan(4, dayNumber('2027-04-10'))).toBe(Number.POSITIVE_INFINITY);
  });
  it('is the first day of the step that is colder', () => {
    const autumn = climateOf(
      [
        { from: '2027-09-01', celsius: 14 },
        { from: '2027-10-15', celsius: 8 },
        { from: '2027-12-01', celsius: 3 },
      ],
      dublin,
    );
    expect(autumn.nextDayColderThan(5, dayNumber('2027-09-20'))).toBe(dayNumber('2027-12-01'));
    expect(autumn.nextDayColderThan(10, dayNumber('2027-09-20'))).toBe(dayNumber('2027-10-15'));
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
      const climate = climateOf(steps, dublin);
      const audit = weather({ temperatures: steps }, auditCalendar('Europe/Dublin'));
      expect(climate.celsiusOn(day)).toBe(audit!.at(auditCalendar('Europe/Dublin').minuteAt(dateOfDay(day), '00:00')));
      let next = day;
      while (climate.celsiusOn(next)! >= celsius && next < dayNumber('2028-04-02')) next++;
      expect(climate.nextDayColderThan(celsius, day)).toBe(
        climate.celsiusOn(next)! < celsius ? next : Number.POSITIVE_INFINITY,
      );
    }),
    { numRuns: 500 },
  );
});
