import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dateOfDay, dayNumber } from '../../../shared/time.ts';
import { lastSuch, readDate } from '../../../src/usecases/typed/date-typed.ts';

/** A Monday. */
const TODAY = '2027-04-05';
const metric = { today: TODAY, system: 'metric' } as const;
const US = { today: TODAY, system: 'US' } as const;

describe('a day as people write it', () => {
  test.each([
    ['2027-05-08', '2027-05-08'],
    ['2027-5-8', '2027-05-08'],
    ['8 May', '2027-05-08'],
    ['8 may', '2027-05-08'],
    ['8th of May', '2027-05-08'],
    ['8 May 2028', '2028-05-08'],
    ['8 May 28', '2028-05-08'],
    ['May 8', '2027-05-08'],
    ['May 8th, 2028', '2028-05-08'],
    ['Sat 8 May', '2027-05-08'],
    ['Saturday, 8 May 2027', '2027-05-08'],
    ['Sat. 8.5.', '2027-05-08'],
    ['8.5.', '2027-05-08'],
    ['8.5', '2027-05-08'],
    ['08.05.2027', '2027-05-08'],
    ['8.5.27', '2027-05-08'],
    ['13 Sept', '2027-09-13'],
    ['today', '2027-04-05'],
    ['Tomorrow', '2027-04-06'],
    ['Saturday', '2027-04-10'],
    ['next Saturday', '2027-04-10'],
    ['on Thurs', '2027-04-08'],
    ['Monday', '2027-04-12'],
    ['in 2 weeks', '2027-04-19'],
    ['in 10 days', '2027-04-15'],
    ['a week', '2027-04-12'],
    // The first such day from today on; the next 29 Feb is in 2028.
    ['5 Apr', '2027-04-05'],
    ['29 Feb', '2028-02-29'],
    // Ninety-one days ago is 4 January: what is longer gone by is to come.
    ['4 Jan', '2028-01-04'],
    // Named with its weekday, a day that has just gone by is that day and not next year's.
    ['Sat 3 Apr', '2027-04-03'],
    ['Mon 3 Apr', '2028-04-03'],
    ['4 Apr 2027', '2027-04-04'],
  ])('%j is %s', (typed, date) => {
    expect(readDate(typed, metric)).toEqual({ ok: true, date, order: null });
    expect(readDate(typed, US)).toEqual({ ok: true, date, order: null });
  });
});

describe('a day that has just gone by', () => {
  test.each([
    ['4 Apr', '2027-04-04', '2028-04-04'],
    ['4.4.', '2027-04-04', '2028-04-04'],
    ['5 Jan', '2027-01-05', '2028-01-05'],
  ])('%j is %s where no year is named, and the next one stands beside it', (typed, date, next) => {
    expect(readDate(typed, metric)).toEqual({ ok: true, date, order: null, next });
  });

  test('in January is one of last year', () => {
    const how = { today: '2028-01-10', system: 'metric' } as const;
    expect(readDate('20 Dec', how)).toEqual({ ok: true, date: '2027-12-20', order: null, next: '2028-12-20' });
    expect(readDate('3/4', metric)).toMatchObject({ date: '2027-04-03', order: 'day first', next: '2028-04-03' });
  });
});

describe('two numbers that could be either', () => {
  test('are read by the yard, and it is said how', () => {
    expect(readDate('5/6', metric)).toEqual({ ok: true, date: '2027-06-05', order: 'day first' });
    expect(readDate('5/6', US)).toEqual({ ok: true, date: '2027-05-06', order: 'month first' });
    expect(readDate('5-6-2028', US)).toEqual({ ok: true, date: '2028-05-06', order: 'month first' });
    expect(readDate('5/6/28', metric)).toEqual({ ok: true, date: '2028-06-05', order: 'day first' });
  });

  test('are the only date they can be where one of them is no month', () => {
    for (const how of [metric, US]) {
      expect(readDate('5/13', how)).toEqual({ ok: true, date: '2027-05-13', order: null });
      expect(readDate('13/5', how)).toEqual({ ok: true, date: '2027-05-13', order: null });
      expect(readDate('6/6', how)).toEqual({ ok: true, date: '2027-06-06', order: null });
    }
  });
});

describe('what is no day', () => {
  test.each([
    ['31 Apr', /^31 Apr does not exist\. Write a day like/],
    ['2027-02-30', /^30 Feb 2027 does not exist\./],
    ['29 Feb 2027', /^29 Feb 2027 does not exist\./],
    ['31.4.', /^31 Apr does not exist\./],
    ['8.13.', /^There is no month 13\./],
    ['Sun 8 May', /^8 May 2027 is a Saturday, not a Sunday\.$/],
    ['sometime', /^"sometime" is no day\. Write a day like 8 May, Sat 8 May or 2027-05-08\.$/],
    ['8', /^"8" is no day\./],
    ['8 Mayonnaise', /^"8 Mayonnaise" is no day\./],
    ['0 May', /^0 May does not exist\./],
    ['1/2/3/4', /is no day/],
    ['8 May 2207', /^Is the year 2207 right\? It is too far off to plan for\./],
    ['0027-05-08', /^Is the year 27 right\?/],
    ['8 May 1997', /^Is the year 1997 right\?/],
  ])('%j is refused: %s', (typed, reason) => {
    const read = readDate(typed, metric);
    expect(read.ok ? read.date : read.reason).toMatch(reason);
  });
});

test('every day written out in full is read as itself, whatever the units', () => {
  const names = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 3650 }), fc.constantFrom(metric, US), (days, how) => {
      const date = dateOfDay(dayNumber(TODAY) + days);
      const [year, month, day] = date.split('-').map(Number) as [number, number, number];
      for (const typed of [date, `${day} ${names[month - 1]} ${year}`, `${day}.${month}.${year}`])
        expect(readDate(typed, how)).toEqual({ ok: true, date, order: null });
    }),
  );
});

test('whatever is typed is either a date that exists or a reason, never an exception', () => {
  fc.assert(
    fc.property(fc.string({ maxLength: 20 }), fc.constantFrom(metric, US), (typed, how) => {
      const read = readDate(typed, how);
      if (read.ok) expect(dateOfDay(dayNumber(read.date))).toBe(read.date);
      else expect(read.reason).not.toBe('');
    }),
  );
});

test('a day of bags is the last such one where no year was named, and stays where there was none the year before', () => {
  for (const [date, text, last] of [
    ['2028-03-20', '20 Mar', '2027-03-20'],
    ['2028-03-20', '20 Mar 2028', '2028-03-20'],
    ['2027-03-20', '20 Mar', '2027-03-20'],
    ['2028-02-29', '29 Feb', '2028-02-29'],
    ['2028-03-20', '03/20', '2027-03-20'],
    ['2027-06-02', 'tomorrow', '2027-06-02'],
    ['2027-06-05', 'next Sat', '2027-06-05'],
  ] as const)
    expect([text, lastSuch(date, text, '2027-06-01')]).toEqual([text, last]);
});
