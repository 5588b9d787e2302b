import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  clock,
  clockEnd,
  clockMinutes,
  dateOfDay,
  dayNumber,
  isDate,
  isInstant,
  isTimeZone,
  minuteOf,
  weekdayOf,
} from '../../shared/time.ts';

describe('days', () => {
  test('are counted from 1970', () => {
    expect([dayNumber('1970-01-01'), dayNumber('1970-01-02'), dayNumber('1969-12-31')]).toEqual([0, 1, -1]);
    // 2000-01-01 is day 10957 of the Unix calendar: 30 years of 365 days and 7 leap days.
    expect(dayNumber('2000-01-01')).toBe(30 * 365 + 7);
  });

  test('there and back', () => {
    fc.assert(fc.property(fc.integer({ min: -100_000, max: 100_000 }), (day) => dayNumber(dateOfDay(day)) === day));
  });

  // 1 January 1970 was a Thursday; Easter Sunday of 2027 is 28 March.
  test('have the weekday they have', () => {
    expect([weekdayOf(0), weekdayOf(-1), weekdayOf(dayNumber('2027-03-28'))]).toEqual(['TH', 'WE', 'SU']);
  });

  test.each(['2027-02-28', '2028-02-29', '2000-02-29'])('%s exists', (text) => expect(isDate(text)).toBe(true));
  test.each([
    '2027-02-29',
    '1900-02-29',
    '2027-13-01',
    '2027-04-31',
    '2027-00-10',
    '2027-1-1',
    '27-01-01',
    ' 2027-01-01',
    '',
  ])('%j does not', (text) => expect(isDate(text)).toBe(false));
});

describe('instants', () => {
  test('are minutes from 1970 on', () => {
    expect(minuteOf('1970-01-01T01:00:00+01:00')).toBe(0);
    expect(minuteOf('2027-04-08T09:00:00+05:45')).toBe(dayNumber('2027-04-08') * 1440 + 9 * 60 - 345);
    expect(minuteOf('2027-04-08T09:00Z')).toBe(minuteOf('2027-04-08T09:00:00.000+00:00'));
  });

  // The runtime's own reading, on instants as plans write them and on texts with something wrong in them.
  test('are what the runtime makes of them', () => {
    const two = (n: number) => String(n).padStart(2, '0');
    const part = (max: number) => fc.integer({ min: 0, max });
    const parts = fc.tuple(
      fc.integer({ min: 1900, max: 2200 }),
      part(14),
      part(33),
      part(25),
      part(61),
      part(25),
      part(61),
    );
    fc.assert(
      fc.property(parts, fc.constantFrom('+', '-'), ([year, month, day, hour, minute, offset, minutes], sign) => {
        const text = `${year}-${two(month)}-${two(day)}T${two(hour)}:${two(minute)}:00${sign}${two(offset)}:${two(minutes)}`;
        return Object.is(minuteOf(text), Math.round(Date.parse(text) / 60_000));
      }),
      { numRuns: 2000 },
    );
    const right = '2027-04-08T09:00:00+05:45';
    for (let at = 0; at < right.length; at += 1)
      for (const letter of 'xZ: -+/9') {
        const text = `${right.slice(0, at)}${letter}${right.slice(at + 1)}`;
        expect([text, minuteOf(text)]).toEqual([text, Math.round(Date.parse(text) / 60_000)]);
      }
  });

  test.each(['2027-04-08T09:00:00Z', '2027-04-08T09:00-03:30', '2027-04-08T23:59:00.000+14:00'])('%s is one', (text) =>
    expect(isInstant(text)).toBe(true),
  );
  test.each([
    '2027-04-08T09:00:00',
    '2027-04-08 09:00:00Z',
    '2027-04-08T09:00:30Z',
    '2027-04-08T24:00:00Z',
    '2027-04-08T09:60:00Z',
    '2027-02-29T09:00:00Z',
    '2027-04-08T09:00:00+24:00',
    '2027-04-08T09:00:00+01:60',
    '2027-04-08',
    '',
  ])('%j is none', (text) => expect(isInstant(text)).toBe(false));
});

describe('times of day', () => {
  test('24:00 is an end, and no start', () => {
    expect(clockMinutes('24:00')).toBe(1440);
    expect([clock.safeParse('24:00').success, clockEnd.safeParse('24:00').success]).toEqual([false, true]);
  });
  test.each(['25:00', '7:00', '07:60', '24:01', '07:00:00'])('%s is none', (text) =>
    expect(clockEnd.safeParse(text).success).toBe(false),
  );
  test('are minutes after midnight', () => expect([clockMinutes('00:00'), clockMinutes('07:30')]).toEqual([0, 450]));
});

test.each([
  ['Europe/Dublin', true],
  ['UTC', true],
  ['Pacific/Apia', true],
  ['Europe/Larch', false],
  ['+01:00', false],
  ['', false],
])('%s is a zone: %s', (name, known) => expect(isTimeZone(name)).toBe(known));
