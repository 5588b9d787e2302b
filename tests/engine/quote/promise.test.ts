import { describe, expect, test } from 'vitest';
import { dateOfDay, dayNumber, minuteOf } from '../../../shared/time.ts';
import type { YardFileInput } from '../../../shared/yard-file.ts';
import { compile } from '../../../src/engine/decoder/compile.ts';
import { completeInHand, handoverOn, promiseDay } from '../../../src/engine/quote/promise.ts';
import { smallYard } from '../../support/small-yard.ts';

const base = smallYard();
/** Saturdays from 08:00 to 12:00 and Wednesdays from 18:00 to 20:30; handed over on Saturdays and Tuesdays. */
const problemOf = (sessionsInHand: number, more: Partial<YardFileInput> = {}) =>
  compile(
    smallYard({
      yard: { ...base.yard, handoverDays: ['SA', 'TU'], sessionsInHand },
      work: [base.work[0]!, { rule: 'FREQ=WEEKLY;BYDAY=WE', from: '2027-01-06', start: '18:00', end: '20:30' }],
      ...more,
    }),
  );
const promised = (sessionsInHand: number, earliest: string, more?: Partial<YardFileInput>) => {
  const day = promiseDay(problemOf(sessionsInHand, more), minuteOf(`2027-04-${earliest}:00+01:00`));
  return day === null ? null : dateOfDay(day);
};

test('the hand-over day of a minute is the first on or after its date', () => {
  const problem = problemOf(0);
  const on = (at: string) => dateOfDay(handoverOn(problem, minuteOf(`2027-04-${at}:00+01:00`)));
  expect([on('10T23:59'), on('11T00:00'), on('13T00:00'), on('14T08:00')]).toEqual([
    ...['2027-04-10', '2027-04-13', '2027-04-13', '2027-04-17'],
  ]);
});

describe('the day to promise', () => {
  test('with nothing in hand is the day it is ready', () => {
    expect(promised(0, '10T13:15')).toBe('2027-04-10');
    expect(promised(0, '11T13:15')).toBe('2027-04-13');
  });

  // Wednesday the 14th is the session in hand; the hand-over day after it is Saturday the 17th.
  test('one session later', () => expect(promised(1, '10T13:15')).toBe('2027-04-17'));
  // Saturday the 17th itself is the second: handed over that day.
  test('two sessions later', () => expect(promised(2, '10T13:15')).toBe('2027-04-17'));
  test('three sessions later', () => expect(promised(3, '10T13:15')).toBe('2027-04-24'));

  test('a session counts when it starts at that minute, not when it is under way', () => {
    expect(promised(1, '10T08:00')).toBe('2027-04-10');
    expect(promised(1, '10T08:01')).toBe('2027-04-17');
  });

  test('a session without batches does not count', () => {
    const extra = [{ date: '2027-04-12', start: '19:00', end: '19:30', allows: ['strip' as const] }];
    expect(promised(1, '10T13:15', { extra })).toBe('2027-04-17');
    const pours = [{ ...extra[0]!, allows: ['batch' as const] }];
    expect(promised(1, '10T13:15', { extra: pours })).toBe('2027-04-13');
  });

  // On the last day of the horizon a session goes on to midnight: that is the day after, which the plan knows nothing of.
  test('a session that ends with the horizon counts for its last day', () => {
    const extra = [{ date: '2027-04-20', start: '19:00', end: '24:00' }];
    const yard = { ...base.yard, handoverDays: ['TU' as const], horizonDays: 12, sessionsInHand: 1 };
    expect(promised(1, '19T13:15', { yard, work: [], extra })).toBe('2027-04-20');
  });

  test('there is none where the horizon has not that many sessions left', () => {
    expect(promised(18, '10T13:15', { yard: { ...base.yard, horizonDays: 12, sessionsInHand: 18 } })).toBe(null);
  });
});

describe('the last minute that keeps sessions in hand before a date', () => {
  test('is when the last of them begins', () => {
    const until = (sessions: number, given: string) => completeInHand(problemOf(sessions), dayNumber(given));
    expect(until(1, '2027-04-17')).toBe(minuteOf('2027-04-17T08:00:00+01:00'));
    // Of Saturday and Wednesday the 14th the earlier is the second.
    expect(until(2, '2027-04-17')).toBe(minuteOf('2027-04-14T18:00:00+01:00'));
    // What ends on Wednesday is handed over on Saturday.
    expect(until(1, '2027-04-16')).toBe(minuteOf('2027-04-10T08:00:00+01:00'));
  });

  test('is the last for which that date or an earlier one is promised', () => {
    const problem = problemOf(2);
    const given = dayNumber('2027-04-24');
    const until = completeInHand(problem, given);
    expect(promiseDay(problem, until)).toBeLessThanOrEqual(given);
    expect(promiseDay(problem, until + 1)).toBeGreaterThan(given);
  });
});
