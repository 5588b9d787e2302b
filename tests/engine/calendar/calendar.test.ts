import fc from 'fast-check';
import { Temporal } from 'temporal-polyfill';
import { describe, expect, it } from 'vitest';
import { dateOfDay, dayNumber, minuteOf } from '../../../shared/time.ts';
import { calendarOf } from '../../../src/engine/calendar/calendar.ts';
import { calendar as auditCalendar } from '../../contract/audit-plan.mjs';
import { AWKWARD_ZONES, dateBetween } from '../../support/hours-yard.ts';

const clock = (text: string) => Number(text.slice(0, 2)) * 60 + Number(text.slice(3));
const read = (zone: string, date: string, time: string) => {
  const calendar = calendarOf(zone);
  return calendar.instantText(calendar.minuteAt(dayNumber(date), clock(time)));
};

describe('a clock time that does not exist is read with the offset before the gap', () => {
  // IANA time zone database; the reading is RFC 5545, 3.3.5.
  it.each([
    ['Europe/Dublin', '2027-03-28', '01:30', '2027-03-28T02:30:00+01:00'],
    ['America/New_York', '2027-03-14', '02:30', '2027-03-14T03:30:00-04:00'],
    ['Australia/Lord_Howe', '2027-10-03', '02:15', '2027-10-03T02:45:00+11:00'],
    ['America/Santiago', '2027-09-05', '00:00', '2027-09-05T01:00:00-03:00'],
    ['America/Santiago', '2027-09-04', '24:00', '2027-09-05T01:00:00-03:00'],
    ['Pacific/Apia', '2011-12-30', '08:00', '2011-12-31T08:00:00+14:00'],
  ])('%s %s %s', (zone, date, time, instant) => expect(read(zone, date, time)).toBe(instant));
});

describe('a clock time that occurs twice is the first', () => {
  it.each([
    ['Europe/Dublin', '2027-10-31', '01:30', '2027-10-31T01:30:00+01:00'],
    ['America/New_York', '2027-11-07', '01:30', '2027-11-07T01:30:00-04:00'],
    ['Australia/Lord_Howe', '2027-04-04', '01:45', '2027-04-04T01:45:00+11:00'],
    ['America/Havana', '2027-11-07', '00:00', '2027-11-07T00:00:00-04:00'],
    ['America/Santiago', '2027-04-03', '23:30', '2027-04-03T23:30:00-03:00'],
  ])('%s %s %s', (zone, date, time, instant) => expect(read(zone, date, time)).toBe(instant));
});

describe('the edges of a change', () => {
  const calendar = calendarOf('Europe/Dublin');
  it('goes from the last minute of winter time to the first of summer time', () => {
    expect(calendar.instantText(minuteOf('2027-03-28T00:59:00Z'))).toBe('2027-03-28T00:59:00+00:00');
    expect(calendar.instantText(minuteOf('2027-03-28T01:00:00Z'))).toBe('2027-03-28T02:00:00+01:00');
  });
  it('makes the days of the changes 23 and 25 hours long', () => {
    const hours = (date: string) =>
      (calendar.midnightOf(dayNumber(date) + 1) - calendar.midnightOf(dayNumber(date))) / 60;
    expect([hours('2027-03-27'), hours('2027-03-28'), hours('2027-10-31')]).toEqual([24, 23, 25]);
  });
  it('has the later date after a midnight that was skipped, and the earlier date again after one turned back', () => {
    const santiago = calendarOf('America/Santiago');
    expect(dateOfDay(santiago.dayOf(minuteOf('2027-09-05T03:59:00Z')))).toBe('2027-09-04');
    expect(dateOfDay(santiago.dayOf(minuteOf('2027-09-05T04:00:00Z')))).toBe('2027-09-05');
    // 24:00 on 3 April becomes 23:00 on 3 April.
    expect(dateOfDay(santiago.dayOf(minuteOf('2027-04-04T03:30:00Z')))).toBe('2027-04-03');
  });
  it('gives the skipped day of Samoa no minute of its own', () => {
    const apia = calendarOf('Pacific/Apia');
    expect(apia.midnightOf(dayNumber('2011-12-30'))).toBe(apia.midnightOf(dayNumber('2011-12-31')));
    expect(dateOfDay(apia.dayOf(apia.midnightOf(dayNumber('2011-12-31')) - 1))).toBe('2011-12-29');
  });
});

it('counts an old offset with seconds to the minute below', () => {
  // Dublin Mean Time, until 1916, was 25 min 21 s behind: 00:25Z was 23:59:39 of the day before, 00:26Z 00:00:39.
  const dublin = calendarOf('Europe/Dublin');
  const dates = ['00:25', '00:26'].map((clock) => dublin.dayOf(minuteOf(`1900-01-01T${clock}:00Z`)));
  expect(dates.map(dateOfDay)).toEqual(['1899-12-31', '1900-01-01']);
});

it('knows no zone that is not there', () => expect(() => calendarOf('Europe/Nowhere').dayOf(0)).toThrow(RangeError));

const anyZone = fc.constantFrom(...AWKWARD_ZONES, 'Pacific/Apia');
/** Whole minutes from 1975 to 2079, half of them within a day and a half of a change of clocks, where there are any. */
const anyMinute = fc
  .tuple(anyZone, fc.integer({ min: 2_629_440, max: 57_854_880 }), fc.integer({ min: -2000, max: 2000 }))
  .map(([zone, minute, near]) => {
    const next = Temporal.Instant.fromEpochMilliseconds(minute * 60_000)
      .toZonedDateTimeISO(zone)
      .getTimeZoneTransition('next');
    return { zone, minute: next && minute % 2 ? next.epochMilliseconds / 60_000 + near : minute };
  });

describe('against Temporal', () => {
  it('reads every instant as the same date, clock and offset', () => {
    fc.assert(
      fc.property(anyMinute, ({ zone, minute }) => {
        const zoned = Temporal.Instant.fromEpochMilliseconds(minute * 60_000).toZonedDateTimeISO(zone);
        const calendar = calendarOf(zone);
        expect(calendar.instantText(minute)).toBe(zoned.toString({ timeZoneName: 'never' }));
        expect(dateOfDay(calendar.dayOf(minute))).toBe(zoned.toPlainDate().toString());
        expect(minuteOf(calendar.instantText(minute))).toBe(minute);
      }),
      { numRuns: 3000 },
    );
  });
  it('turns every clock time into the same instant ("compatible")', () => {
    fc.assert(
      fc.property(anyMinute, ({ zone, minute }) => {
        const wall = Temporal.Instant.fromEpochMilliseconds(minute * 60_000)
          .toZonedDateTimeISO(zone)
          .toPlainDateTime();
        // A quarter of the clock times lie in or around the hour that is skipped or met twice.
        const near = wall.add({ minutes: (minute % 5) * 30 - 60 });
        const minuteAt = calendarOf(zone).minuteAt(
          dayNumber(near.toPlainDate().toString()),
          near.hour * 60 + near.minute,
        );
        expect(minuteAt).toBe(near.toZonedDateTime(zone).epochMilliseconds / 60_000);
      }),
      { numRuns: 3000 },
    );
  });
});

describe('against the audit, which asks Intl', () => {
  const audits = new Map(AWKWARD_ZONES.map((zone) => [zone, auditCalendar(zone)]));
  it('has the same instants', () => {
    const times = [
      '00:00',
      '00:30',
      '01:00',
      '01:15',
      '01:30',
      '02:00',
      '02:15',
      '02:30',
      '03:00',
      '12:00',
      '23:30',
      '23:59',
    ];
    fc.assert(
      fc.property(fc.constantFrom(...AWKWARD_ZONES), dateBetween('2000-01-01', '2050-12-31'), (zone, date) => {
        for (const time of times)
          expect(calendarOf(zone).minuteAt(dayNumber(date), clock(time))).toBe(audits.get(zone)!.minuteAt(date, time));
      }),
      { numRuns: 400 },
    );
  });
  it('has the same dates in every zone there is', () => {
    for (const zone of Intl.supportedValuesOf('timeZone')) {
      const audit = auditCalendar(zone);
      for (let year = 2000; year < 2060; year += 13) {
        const minute = minuteOf(`${year}-01-01T00:00:00Z`) + (year % 7) * 80_000;
        expect(dateOfDay(calendarOf(zone).dayOf(minute)), `${zone} ${minute}`).toBe(audit.dateOf(minute));
        expect(calendarOf(zone).minuteAt(dayNumber(`${year}-10-25`), 90)).toBe(
          audit.minuteAt(`${year}-10-25`, '01:30'),
        );
      }
    }
  });
});
