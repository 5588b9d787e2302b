import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dateOfDay, dayNumber, minuteOf } from '../../../shared/time.ts';
import { calendarOf } from '../../../src/engine/calendar/calendar.ts';
import { sessionsOf } from '../../../src/engine/calendar/sessions.ts';
import { hoursWith, sessionsOfDay } from '../../../src/usecases/plan/hours-of-day.ts';
import { anyHoursYard, hoursYard } from '../../support/hours-yard.ts';

const DATE = '2027-04-10';
const yard = hoursYard({
  now: '2027-04-10T12:00:00+01:00',
  work: [
    { rule: 'FREQ=WEEKLY;BYDAY=SA', from: '2027-01-02', start: '08:00', end: '13:30' },
    { rule: 'FREQ=WEEKLY;BYDAY=SA', from: '2027-01-02', start: '09:00', end: '12:30', crew: 2 },
    { rule: 'FREQ=DAILY', from: '2027-01-02', start: '23:00', end: '24:00', allows: ['strip'] },
  ],
});
/** Together these make sessions that go on past midnight. */
const pastMidnight = hoursYard({
  work: [
    { rule: 'FREQ=DAILY', from: '2027-01-01', start: '22:00', end: '24:00' },
    { rule: 'FREQ=DAILY', from: '2027-01-01', start: '00:00', end: '02:00', crew: 2 },
  ],
}).work;
const morning = minuteOf('2027-04-10T08:00:00+01:00');

describe('the hours of a day', () => {
  test('are in sessions, those over already among them', () => {
    expect(
      sessionsOfDay({ ...yard, yard: { ...yard.yard, now: '2027-04-10T22:00:00+01:00' } }, dayNumber(DATE)),
    ).toHaveLength(2);
    expect(sessionsOfDay(yard, dayNumber('2027-04-12'))).toHaveLength(1);
  });

  test('come back as clock times when one session is changed, the others as they were', () => {
    const hours = hoursWith(yard, DATE, morning, (window, index) => (index === 1 ? null : { ...window, crew: 3 }));
    expect(hours).toEqual([
      { start: '08:00', end: '13:30', crew: 3, allows: ['prep', 'batch', 'strip', 'pack'] },
      { start: '23:00', end: '24:00', crew: 1, allows: ['strip'] },
    ]);
  });

  test('written down as one-off hours they make the same sessions, in any zone and on days the clocks change', () => {
    fc.assert(
      fc.property(anyHoursYard, fc.nat(400), fc.boolean(), (some, ahead, nights) => {
        const any = nights ? { ...some, work: [...some.work, ...pastMidnight] } : some;
        const calendar = calendarOf(any.yard.timeZone);
        const day = calendar.dayOf(minuteOf(any.yard.now)) + Math.min(ahead, any.yard.horizonDays);
        const date = dateOfDay(day);
        const hours = hoursWith(any, date, Number.NaN, (window) => window);
        const replaced = {
          ...any,
          closed: [...any.closed, date],
          extra: [
            ...any.extra.filter((window) => window.date !== date),
            ...hours.map((window) => ({ ...window, date })),
          ],
        };
        expect(sessionsOf(replaced, calendar)).toEqual(sessionsOf(any, calendar));
      }),
      { numRuns: 200 },
    );
  });
});
