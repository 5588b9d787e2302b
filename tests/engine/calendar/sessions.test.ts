import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { RRuleTemporal } from 'rrule-temporal';
import { Temporal } from 'temporal-polyfill';
import { describe, expect, it } from 'vitest';
import { clockMinutes, dayNumber, minuteOf } from '../../../shared/time.ts';
import { readYardFile, type YardFile } from '../../../shared/yard-file.ts';
import { calendarOf } from '../../../src/engine/calendar/calendar.ts';
import { type Session, sessionsOf } from '../../../src/engine/calendar/sessions.ts';
import { sessions as auditSessions, ruleDates } from '../../contract/audit-plan.mjs';
import { AWKWARD_ZONES, anyHoursYard, hoursYard } from '../../support/hours-yard.ts';

const sessionsIn = (yard: YardFile): Session[] => sessionsOf(yard, calendarOf(yard.yard.timeZone));
/** "2027-01-02 08:00-13:30 x2": date, clock times and number of windows of each session. */
const lines = (yard: YardFile): string[] => {
  const text = calendarOf(yard.yard.timeZone).instantText;
  return sessionsIn(yard).map((s) => {
    const [start, end] = [text(s.start), text(s.end)];
    return `${start.slice(0, 10)} ${start.slice(11, 16)}-${end.slice(11, 16)} x${s.windows.length}`;
  });
};
const crewAt = (session: Session, minute: number): number =>
  session.windows.reduce((sum, w) => sum + (w.start <= minute && minute < w.end ? w.crew : 0), 0);

const saturday = { rule: 'FREQ=WEEKLY;BYDAY=SA', from: '2027-01-01' };
const daily = { rule: 'FREQ=DAILY', from: '2027-01-01' };

describe('windows become sessions', () => {
  // 1 January 2027 is a Friday, 2 January a Saturday; Dublin is on UTC then.
  it('joins windows that overlap and adds their people up, minute by minute', () => {
    const yard = hoursYard({
      horizonDays: 1,
      setUpMinutes: 10,
      clearUpMinutes: 15,
      work: [
        { ...saturday, start: '09:00', end: '12:00', crew: 2 },
        { ...saturday, start: '08:00', end: '13:30' },
      ],
    });
    const [session, ...more] = sessionsIn(yard);
    const at = (clock: string) => minuteOf(`2027-01-02T${clock}:00Z`);
    expect(more).toEqual([]);
    expect([session!.start, session!.end]).toEqual([at('08:00'), at('13:30')]);
    expect([session!.from, session!.to]).toEqual([at('08:10'), at('13:15')]);
    expect(session!.day).toBe(dayNumber('2027-01-02'));
    expect(session!.windows.map((w) => w.start)).toEqual([at('08:00'), at('09:00')]);
    const crews = ['08:00', '08:59', '09:00', '11:59', '12:00', '13:29', '13:30'].map((t) => crewAt(session!, at(t)));
    expect(crews).toEqual([1, 1, 3, 3, 1, 1, 0]);
  });
  it('joins windows that touch, also over midnight, and keeps apart what is a minute apart', () => {
    const windows = (start: string) => [
      { ...daily, start: '20:00', end: '24:00' },
      { rule: 'FREQ=DAILY', from: '2027-01-02', start, end: '02:00' },
    ];
    const touching = hoursYard({ horizonDays: 1, work: windows('00:00') });
    expect(lines(touching)).toEqual(['2027-01-01 20:00-02:00 x2', '2027-01-02 20:00-00:00 x1']);
    const apart = hoursYard({ horizonDays: 1, work: windows('00:01') });
    expect(lines(apart)).toHaveLength(3);
  });
  it('has a session of which setting up and clearing up leave nothing', () => {
    const yard = hoursYard({
      horizonDays: 1,
      setUpMinutes: 30,
      clearUpMinutes: 40,
      work: [{ ...saturday, start: '08:00', end: '09:00' }],
    });
    expect(sessionsIn(yard).map((s) => s.to - s.from)).toEqual([-10]);
  });
});

describe('which dates', () => {
  const morning = { start: '08:00', end: '09:00' };
  it('opens nothing on a closed date but an extra window, and counts the closed date', () => {
    const yard = hoursYard({
      horizonDays: 5,
      work: [{ rule: 'FREQ=DAILY;COUNT=3', from: '2027-01-01', ...morning }],
      closed: ['2027-01-02'],
      extra: [{ date: '2027-01-02', start: '10:00', end: '11:00' }],
    });
    expect(lines(yard)).toEqual([
      '2027-01-01 08:00-09:00 x1',
      '2027-01-02 10:00-11:00 x1',
      '2027-01-03 08:00-09:00 x1',
    ]);
  });
  it('covers date(now) to date(now) + horizonDays, both included, in the yard’s zone', () => {
    // 20:00 in New York on 1 January is 01:00 of the 2nd in UTC.
    const yard = hoursYard({
      timeZone: 'America/New_York',
      now: '2027-01-02T01:00:00Z',
      horizonDays: 1,
      work: [{ ...daily, start: '21:00', end: '22:00' }],
      extra: ['2026-12-31', '2027-01-03'].map((date) => ({ date, start: '23:00', end: '24:00' })),
    });
    expect(lines(yard)).toEqual(['2027-01-01 21:00-22:00 x1', '2027-01-02 21:00-22:00 x1']);
  });
  it('leaves out a session that is over, and has the whole of one under way', () => {
    const at = (now: string) => lines(hoursYard({ now, horizonDays: 1, work: [{ ...daily, ...morning }] }));
    expect(at('2027-01-01T08:59:00Z')).toEqual(['2027-01-01 08:00-09:00 x1', '2027-01-02 08:00-09:00 x1']);
    expect(at('2027-01-01T09:00:00Z')).toEqual(['2027-01-02 08:00-09:00 x1']);
  });
});

describe('where the clocks change', () => {
  // Dublin: 01:00 becomes 02:00 on 28 March 2027, and 02:00 becomes 01:00 on 31 October.
  const dublin = (now: string, start: string, end: string) =>
    hoursYard({ now: `${now}T00:00:00Z`, horizonDays: 1, work: [{ ...daily, start, end }] });
  it('keeps the clock time and so is an hour shorter or longer', () => {
    const hours = (yard: YardFile) => sessionsIn(yard).map((s) => (s.end - s.start) / 60);
    expect(hours(dublin('2027-03-27', '00:30', '04:30'))).toEqual([4, 3]);
    expect(hours(dublin('2027-10-30', '00:30', '04:30'))).toEqual([4, 5]);
  });
  it('leaves out a window that begins in the gap and so ends before it starts', () => {
    // 01:45 does not exist: read with the offset before it is 02:45 summer time, after the end at 02:15.
    expect(lines(dublin('2027-03-27', '01:45', '02:15'))).toEqual(['2027-03-27 01:45-02:15 x1']);
  });
  it('opens a whole day on the date that begins at 01:00', () => {
    const yard = hoursYard({
      timeZone: 'America/Santiago',
      now: '2027-09-04T12:00:00-04:00',
      horizonDays: 1,
      work: [{ ...daily, start: '00:00', end: '24:00' }],
    });
    expect(sessionsIn(yard).map((s) => (s.end - s.start) / 60)).toEqual([24 + 23]);
  });
});

describe('against rrule-temporal and Temporal, a year of each window across every change of clocks', () => {
  const hours = [
    ['00:00', '00:45'],
    ['00:00', '24:00'],
    ['01:30', '05:00'],
    ['02:15', '02:50'],
    ['08:00', '13:30'],
    ['23:15', '24:00'],
  ] as const;
  const rules = ['FREQ=DAILY', 'FREQ=WEEKLY;BYDAY=SU,SA', 'FREQ=MONTHLY;BYDAY=-1SU,1SU,2SU,FR'];
  const [first, last] = ['2027-01-01', '2027-12-31'];
  const cases = AWKWARD_ZONES.flatMap((zone) =>
    rules.flatMap((rule) => hours.map(([start, end]) => ({ zone, rule, start, end }))),
  );
  const minute = (zoned: Temporal.ZonedDateTime) => zoned.epochMilliseconds / 60_000;

  it.each(cases)('$zone $rule $start-$end', ({ zone, rule, start, end }) => {
    const at = (date: Temporal.PlainDate, clock: string) =>
      clock === '24:00'
        ? date.add({ days: 1 }).toZonedDateTime({ timeZone: zone, plainTime: '00:00' })
        : date.toZonedDateTime({ timeZone: zone, plainTime: clock });
    const occurrences = (clock: string) => {
      const expansion = new RRuleTemporal({ rruleString: rule, dtstart: at(Temporal.PlainDate.from(first), clock) });
      const to = at(Temporal.PlainDate.from(last), '24:00').subtract({ minutes: 1 });
      return expansion.between(at(Temporal.PlainDate.from(first), '00:00'), to, true);
    };
    const now = at(Temporal.PlainDate.from(first), '00:00').toString({ timeZoneName: 'never' });
    const window = { rule, from: first, start, end };
    const yard = hoursYard({ timeZone: zone, now, horizonDays: dayNumber(last) - dayNumber(first), work: [window] });
    const mine = sessionsIn(yard).flatMap((session) => session.windows.map((w) => [w.start, w.end]));

    // Dates as rrule-temporal has them at noon, which no zone skips; both ends by Temporal ("compatible").
    const dates = occurrences('12:00').map((noon) => noon.toPlainDate());
    const expected = dates.map((date) => [minute(at(date, start)), minute(at(date, end))]).filter(([s, e]) => e! > s!);
    expect(expected.length).toBeGreaterThan(20);
    expect(mine).toEqual(expected);

    // Starts as rrule-temporal has them in the zone. It leaves out those the clock skips, as RFC 5545 (3.3.10) has it
    // for rules; a yard file reads them with the offset before the gap, as 3.3.5 has it for single times.
    const clockOf = (m: number) => calendarOf(zone).instantText(m).slice(11, 16);
    const starts = occurrences(start).map(minute);
    expect(mine.map(([s]) => s!).filter((m) => clockOf(m) === start)).toEqual(starts);
  });
});

describe('on any yard', () => {
  const sameAsAudit = (yard: YardFile) => {
    const now = minuteOf(yard.yard.now);
    const plain = (s: Pick<Session, 'start' | 'end' | 'from' | 'to' | 'windows'>) => ({
      span: [s.start, s.end, s.from, s.to],
      windows: s.windows.map(({ start, end, crew, allows }) => ({ start, end, crew, allows })),
    });
    const expected = auditSessions(yard).filter((s) => s.end > now);
    expect(sessionsIn(yard).map(plain)).toEqual(expected.map(plain));
  };
  it('has the sessions of the audit', () => {
    fc.assert(fc.property(anyHoursYard, sameAsAudit), { numRuns: 500 });
  });
  it('has the sessions of the audit on the example yard', () => {
    const path = new URL('../../contract/example.yard.json', import.meta.url);
    const read = readYardFile(JSON.parse(readFileSync(path, 'utf8')));
    if (!read.ok) throw new Error('the example yard has faults');
    sameAsAudit(read.yard);
    // 366 evenings from 5 April, 52 Saturdays without 1 May, 52 Wednesdays, one extra Friday.
    expect(sessionsIn(read.yard).length).toBe(469);
  });

  it('has sessions in order with time between them, each covered by its windows and on the date it starts', () => {
    fc.assert(
      fc.property(anyHoursYard, (yard) => {
        const calendar = calendarOf(yard.yard.timeZone);
        const sessions = sessionsIn(yard);
        sessions.forEach((session, i) => {
          if (i > 0) expect(session.start).toBeGreaterThan(sessions[i - 1]!.end);
          expect(session.day).toBe(calendar.dayOf(session.start));
          let covered = session.start;
          for (const window of session.windows) {
            expect(window.start).toBeLessThanOrEqual(covered);
            expect(window.end).toBeGreaterThan(window.start);
            covered = Math.max(covered, window.end);
          }
          expect(covered).toBe(session.end);
        });
      }),
      { numRuns: 500 },
    );
  });

  it('has as many people at any minute as the windows whose clock times it lies in', () => {
    // Kathmandu is on +05:45 all year, so that dates and clock times need no calendar.
    const zone = { timeZone: 'Asia/Kathmandu', now: '2027-06-01T00:00:00+05:45', horizonDays: 60 };
    const wallStart = dayNumber('2027-06-01') * 1440;
    fc.assert(
      fc.property(anyHoursYard, (some) => {
        const yard: YardFile = { ...some, yard: { ...some.yard, ...zone } };
        const sessions = sessionsIn(yard);
        const closed = new Set(yard.closed.map(dayNumber));
        const openings = [
          ...yard.work.map((w) => ({
            ...w,
            days: new Set(ruleDates(w, dayNumber('2027-07-31')).filter((d) => !closed.has(d))),
          })),
          ...yard.extra.map((w) => ({ ...w, days: new Set([dayNumber(w.date)]) })),
        ];
        for (let wall = wallStart; wall < wallStart + 61 * 1440; wall += 97) {
          const [day, clock] = [Math.floor(wall / 1440), wall % 1440];
          const expected = openings
            .filter((w) => w.days.has(day) && clockMinutes(w.start) <= clock && clock < clockMinutes(w.end))
            .reduce((sum, w) => sum + w.crew, 0);
          expect(sessions.reduce((sum, session) => sum + crewAt(session, wall - 345), 0)).toBe(expected);
        }
      }),
      { numRuns: 60 },
    );
  });
});
