import { describe, expect, test } from 'vitest';
import { dayNumber, minuteOf } from '../../../shared/time.ts';
import type { YardFileInput } from '../../../shared/yard-file.ts';
import { calendarOf } from '../../../src/engine/calendar/calendar.ts';
import { sessionsOf } from '../../../src/engine/calendar/sessions.ts';
import { BATCH, PACK, PREP, STRIP } from '../../../src/engine/decoder/problem.ts';
import { shiftsOf } from '../../../src/engine/decoder/shifts.ts';
import { smallYard } from '../../support/small-yard.ts';

const ALL = PREP | BATCH | STRIP | PACK;
const minute = (clock: string, date = '2027-04-10') => minuteOf(`${date}T${clock}:00+01:00`);

const shiftsFor = (extra: YardFileInput['extra'], more: Partial<YardFileInput['yard']> = {}) => {
  const yard = smallYard({
    work: [],
    extra,
    yard: { ...smallYard().yard, horizonDays: 10, ...more },
  });
  const calendar = calendarOf(yard.yard.timeZone);
  return shiftsOf(sessionsOf(yard, calendar), minuteOf(yard.yard.now), calendar);
};

describe('windows that are open at once', () => {
  // 08:00 to 10:00 one person for everything, 09:00 to 11:00 two more for stripping: one session, 08:00 to 11:00. Ten
  // minutes of setting up and twenty of clearing up leave 08:10 to 10:40.
  const shifts = shiftsFor(
    [
      { date: '2027-04-10', start: '08:00', end: '10:00' },
      { date: '2027-04-10', start: '09:00', end: '11:00', crew: 2, allows: ['strip'] },
    ],
    { setUpMinutes: 10, clearUpMinutes: 20 },
  );
  const at = (clock: string) => shifts.offset[0]! + minute(clock) - shifts.from[0]!;

  test('make one session without its setting up and clearing up', () => {
    expect(shifts.count).toBe(1);
    expect([shifts.from[0], shifts.to[0], shifts.sessionEnd[0]]).toEqual([
      minute('08:10'),
      minute('10:40'),
      minute('11:00'),
    ]);
    expect(shifts.offset[1]).toBe(150);
    expect(shifts.day[0]).toBe(dayNumber('2027-04-10'));
  });

  test('add their people up, minute by minute', () => {
    const people = (clock: string) => shifts.people[at(clock)];
    expect(['08:10', '08:59', '09:00', '09:59', '10:00', '10:39'].map(people)).toEqual([1, 1, 3, 3, 2, 2]);
  });

  test('allow what any of them allows', () => {
    const allowed = (clock: string) => shifts.allow[at(clock)];
    expect(['08:10', '09:30', '10:00', '10:39'].map(allowed)).toEqual([ALL, ALL, STRIP, STRIP]);
  });
});

describe('now', () => {
  test('cuts the session under way', () => {
    const shifts = shiftsFor([{ date: '2027-04-08', start: '08:00', end: '12:00' }]);
    expect([shifts.from[0], shifts.to[0]]).toEqual([minute('09:00', '2027-04-08'), minute('12:00', '2027-04-08')]);
  });

  test('leaves out a session of which only the clearing up is left', () => {
    expect(shiftsFor([{ date: '2027-04-08', start: '08:00', end: '09:10' }], { clearUpMinutes: 10 }).count).toBe(0);
  });
});

describe('a session longer than a long day', () => {
  test('is cut at midnights', () => {
    const dates = ['2027-04-09', '2027-04-10', '2027-04-11'];
    const shifts = shiftsFor(dates.map((date) => ({ date, start: '00:00', end: '24:00' })));
    expect([...shifts.day]).toEqual(dates.map(dayNumber));
    expect([...shifts.to].map((to, s) => to - shifts.from[s]!)).toEqual([1440, 1440, 1440]);
    expect(new Set(shifts.sessionEnd)).toEqual(new Set([minute('00:00', '2027-04-12')]));
  });

  // Summer time ends on 31 October 2027: that day has 25 hours.
  test('by the local clock, also on the night it goes back', () => {
    const shifts = shiftsFor(
      [
        { date: '2027-10-30', start: '06:00', end: '24:00' },
        { date: '2027-10-31', start: '00:00', end: '24:00' },
      ],
      { now: '2027-10-29T12:00:00+01:00' },
    );
    expect([...shifts.to].map((to, s) => to - shifts.from[s]!)).toEqual([18 * 60, 25 * 60]);
  });

  test('sixteen hours are left whole over midnight', () => {
    const shifts = shiftsFor([
      { date: '2027-04-10', start: '16:00', end: '24:00' },
      { date: '2027-04-11', start: '00:00', end: '08:00' },
    ]);
    expect(shifts.count).toBe(1);
    expect(shifts.day[0]).toBe(dayNumber('2027-04-10'));
  });
});

test('the next shift for stripping and for packing skips those that are for other work', () => {
  const shifts = shiftsFor([
    { date: '2027-04-10', start: '08:00', end: '12:00' },
    { date: '2027-04-12', start: '19:00', end: '19:30', allows: ['strip'] },
    { date: '2027-04-14', start: '18:00', end: '20:00', allows: ['prep', 'pack'] },
  ]);
  expect([...shifts.nextStrip]).toEqual([1, 3, 3]);
  expect([...shifts.nextPack]).toEqual([2, 2, 3]);
});
