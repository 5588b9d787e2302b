import { describe, expect, test } from 'vitest';
import { extraWindow, ruleFault, workWindow } from '../../shared/work.ts';

describe('a recurrence rule (RFC 5545, 3.3.10) that is allowed', () => {
  test.each([
    'FREQ=DAILY',
    'RRULE:FREQ=DAILY;INTERVAL=2',
    'FREQ=WEEKLY;BYDAY=SA,SU;WKST=SU',
    'FREQ=WEEKLY;COUNT=10',
    'FREQ=DAILY;UNTIL=20270401',
    'FREQ=DAILY;UNTIL=20270401T235959Z',
    'FREQ=MONTHLY;BYDAY=1SA,-1SU',
    'FREQ=MONTHLY;BYDAY=SA',
    'FREQ=MONTHLY;BYMONTHDAY=1,15,-1',
  ])('%s', (rule) => expect(ruleFault(rule)).toBe(null));
});

describe('a rule that is not', () => {
  test.each([
    ['every Saturday', 'is no recurrence rule (RFC 5545 RRULE)'],
    ['', 'is no recurrence rule (RFC 5545 RRULE)'],
    ['FREQ=YEARLY', 'has to repeat DAILY, WEEKLY or MONTHLY'],
    ['INTERVAL=2', 'has to repeat DAILY, WEEKLY or MONTHLY'],
    ['FREQ=DAILY;FREQ=WEEKLY', 'has FREQ twice'],
    ['FREQ=DAILY;COUNT=3;UNTIL=20270401', 'has both COUNT and UNTIL'],
    ['FREQ=MONTHLY', 'MONTHLY needs BYDAY or BYMONTHDAY'],
    ['FREQ=MONTHLY;BYDAY=SA;BYMONTHDAY=1', 'MONTHLY needs BYDAY or BYMONTHDAY'],
    ['FREQ=WEEKLY;BYDAY=1SA', 'has BYDAY=1SA, which is outside the allowed rules'],
    ['FREQ=WEEKLY;BYMONTHDAY=1', 'has BYMONTHDAY=1, which is outside the allowed rules'],
    ['FREQ=DAILY;INTERVAL=0', 'has INTERVAL=0, which is outside the allowed rules'],
    ['FREQ=DAILY;UNTIL=20270229', 'has UNTIL=20270229, which is outside the allowed rules'],
    ['FREQ=MONTHLY;BYMONTHDAY=32', 'has BYMONTHDAY=32, which is outside the allowed rules'],
    ['FREQ=DAILY;BYHOUR=8', 'has BYHOUR=8, which is outside the allowed rules'],
    ['FREQ=MONTHLY;BYDAY=SA;BYSETPOS=1', 'has BYSETPOS=1, which is outside the allowed rules'],
  ])('%s %s', (rule, fault) => expect(ruleFault(rule)).toBe(fault));
});

test('a rule that counts begins in 1970 at the earliest', () => {
  const counting = { rule: 'FREQ=DAILY;COUNT=9', from: '1969-12-31', start: '08:00', end: '12:00' };
  expect(workWindow.safeParse(counting).error?.issues[0]).toMatchObject({ path: ['from'] });
  expect(workWindow.safeParse({ ...counting, from: '1970-01-01' }).success).toBe(true);
  expect(workWindow.safeParse({ ...counting, rule: 'FREQ=DAILY' }).success).toBe(true);
});

describe('hours', () => {
  const extra = { date: '2027-04-10', start: '08:00', end: '12:00' };
  test('are for one person and all work unless they say otherwise', () => {
    expect(extraWindow.parse(extra)).toMatchObject({ crew: 1, allows: ['prep', 'batch', 'strip', 'pack'] });
    const two = { ...extra, crew: 2, allows: ['strip' as const] };
    expect(extraWindow.parse(two)).toEqual(two);
  });

  test.each([
    ['08:00', '08:00'],
    ['12:00', '08:00'],
  ])('from %s to %s end no later than they start', (start, end) => {
    const issues = [
      extraWindow.safeParse({ ...extra, start, end }),
      workWindow.safeParse({ rule: 'FREQ=DAILY', from: '2027-01-01', start, end }),
    ].map((x) => x.error?.issues.map((i) => [i.path.join('.'), i.message]));
    expect(issues).toEqual([[['end', 'is not after the start']], [['end', 'is not after the start']]]);
  });
});
