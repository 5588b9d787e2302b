import fc from 'fast-check';
import { RRuleTemporal } from 'rrule-temporal';
import { Temporal } from 'temporal-polyfill';
import { describe, expect, it } from 'vitest';
import { dateOfDay, dayNumber } from '../../../shared/time.ts';
import { ruleFault } from '../../../shared/work.ts';
import { datesOf, type Recurrence } from '../../../src/engine/calendar/recurrence.ts';
import { ruleDates } from '../../contract/audit-plan.mjs';
import { anyRule, dateBetween } from '../../support/hours-yard.ts';

const dates = (window: Recurrence, first: string, last: string): string[] =>
  datesOf(window, dayNumber(first), dayNumber(last)).map(dateOfDay);

describe('dates of a rule, each read off a calendar of 2027', () => {
  const year = (rule: string, from = '2027-01-01', until?: string) =>
    dates({ rule, from, ...(until ? { until } : {}) }, '2027-01-01', '2027-12-31');

  it('anchors at `from`, which is a date itself only if it matches', () => {
    // 1 January 2027 is a Friday.
    expect(year('FREQ=WEEKLY;BYDAY=SA;COUNT=2')).toEqual(['2027-01-02', '2027-01-09']);
    expect(year('FREQ=WEEKLY;COUNT=2')).toEqual(['2027-01-01', '2027-01-08']);
  });
  it('includes the last date of `until` and of UNTIL, whatever hour UNTIL has', () => {
    expect(year('FREQ=DAILY', '2027-01-01', '2027-01-02')).toEqual(['2027-01-01', '2027-01-02']);
    expect(year('FREQ=DAILY;UNTIL=20270102')).toEqual(['2027-01-01', '2027-01-02']);
    expect(year('FREQ=DAILY;UNTIL=20270102T000000Z')).toEqual(['2027-01-01', '2027-01-02']);
    expect(year('FREQ=DAILY;UNTIL=20270102T235900')).toEqual(['2027-01-01', '2027-01-02']);
  });
  it('counts from `from`, even where the plan begins later', () => {
    expect(dates({ rule: 'FREQ=DAILY;COUNT=5', from: '2026-12-30' }, '2027-01-01', '2027-12-31')).toEqual([
      '2027-01-01',
      '2027-01-02',
      '2027-01-03',
    ]);
  });
  it('skips months without a 31st, and counts days from the end of the month', () => {
    expect(year('FREQ=MONTHLY;BYMONTHDAY=31;COUNT=3')).toEqual(['2027-01-31', '2027-03-31', '2027-05-31']);
    expect(year('FREQ=MONTHLY;BYMONTHDAY=-1;COUNT=2')).toEqual(['2027-01-31', '2027-02-28']);
  });
  it('takes every Monday and the second Tuesday together', () => {
    expect(year('FREQ=MONTHLY;BYDAY=MO,2TU;UNTIL=20270131')).toEqual([
      '2027-01-04',
      '2027-01-11',
      '2027-01-12',
      '2027-01-18',
      '2027-01-25',
    ]);
  });
  it('lets the week begin where WKST says', () => {
    // RFC 5545, 3.8.5.3: the example of every other week on Tuesday and Sunday from 5 August 1997, WKST MO and SU.
    const weeks = (wkst: string) =>
      dates(
        { rule: `FREQ=WEEKLY;INTERVAL=2;COUNT=4;BYDAY=TU,SU;WKST=${wkst}`, from: '1997-08-05' },
        '1997-08-01',
        '1997-12-31',
      );
    expect(weeks('MO')).toEqual(['1997-08-05', '1997-08-10', '1997-08-19', '1997-08-24']);
    expect(weeks('SU')).toEqual(['1997-08-05', '1997-08-17', '1997-08-19', '1997-08-31']);
  });
  it('ends at once for rules that never hit', () => {
    expect(year('FREQ=DAILY;INTERVAL=14;BYDAY=MO')).toEqual([]);
    expect(year('FREQ=MONTHLY;INTERVAL=12;BYMONTHDAY=31', '2026-02-01')).toEqual([]);
  });
  it('finds the same dates whether a rule began last week or centuries ago', () => {
    expect(dates({ rule: 'FREQ=WEEKLY;BYDAY=SA', from: '1600-01-01' }, '2027-04-01', '2027-04-12')).toEqual([
      '2027-04-03',
      '2027-04-10',
    ]);
  });
});

const anyQuestion = fc.record({
  rule: anyRule,
  from: dateBetween('2022-01-01', '2028-06-01'),
  until: fc.option(dateBetween('2026-06-01', '2029-06-01'), { nil: undefined }),
  first: dateBetween('2026-06-01', '2028-06-01'),
  days: fc.integer({ min: 1, max: 500 }),
});
const windowOf = ({ rule, from, until }: { rule: string; from: string; until: string | undefined }): Recurrence =>
  until ? { rule, from, until } : { rule, from };

it('has the dates of the audit, which tries each day in turn', () => {
  fc.assert(
    fc.property(anyQuestion, ({ first, days, ...rest }) => {
      const [window, last] = [windowOf(rest), dayNumber(first) + days];
      expect(ruleFault(window.rule)).toBeNull();
      const expected = ruleDates(window, last).filter((day) => day >= dayNumber(first));
      expect(datesOf(window, dayNumber(first), last)).toEqual(expected);
    }),
    { numRuns: 3000 },
  );
});

it('has the dates of rrule-temporal', () => {
  fc.assert(
    fc.property(anyQuestion, ({ first, days, ...rest }) => {
      const [window, last] = [windowOf(rest), dayNumber(first) + days];
      const ends = Math.min(last, window.until ? dayNumber(window.until) : last);
      const untilDate = /;UNTIL=(\d{8})[^;]*/;
      const until = untilDate.exec(window.rule)?.[1];
      const second = new RRuleTemporal({
        rruleString: window.rule.replace(untilDate, until ? `;UNTIL=${until}T000000Z` : ''),
        dtstart: Temporal.PlainDate.from(window.from).toZonedDateTime('UTC'),
      });
      const at = (day: number) => Temporal.PlainDate.from(dateOfDay(day)).toZonedDateTime('UTC');
      const expected = ends < dayNumber(first) ? [] : second.between(at(dayNumber(first)), at(ends), true);
      expect(datesOf(window, dayNumber(first), last).map(dateOfDay)).toEqual(
        expected.map((moment) => moment.toPlainDate().toString()),
      );
    }),
    { numRuns: 400 },
  );
});
