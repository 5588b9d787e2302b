import rrule from 'rrule';
import { describe, expect, test } from 'vitest';
import { dateOfDay, dayNumber, WEEKDAYS } from '../../../shared/time.ts';
import { ruleFault } from '../../../shared/work.ts';
import { type PlainRhythm, rhythmOfRule, ruleOfRhythm } from '../../../src/engine/calendar/plain-rule.ts';
import { datesOf } from '../../../src/engine/calendar/recurrence.ts';

const { RRule } = rrule;
const FROM = '2027-01-06';
const FIRST = dayNumber(FROM);

/** The dates of a year counted off day by day, without a rule: 4 January 2027 is the Monday of the first week. */
const countedOff = ({ days, everyWeeks }: PlainRhythm): string[] => {
  const monday = dayNumber('2027-01-04');
  return Array.from({ length: 365 }, (_, n) => FIRST + n)
    .filter((day) => days.includes(WEEKDAYS[(day - monday) % 7]!))
    .filter((day) => Math.floor((day - monday) / 7) % everyWeeks === 0)
    .map(dateOfDay);
};

/** The dates by the library itself. */
const byLibrary = (rule: string): string[] =>
  new RRule({
    ...RRule.parseString(rule),
    dtstart: new Date(`${FROM}T00:00:00Z`),
    until: new Date('2028-01-05T00:00:00Z'),
  })
    .all()
    .map((date) => date.toISOString().slice(0, 10));

const RHYTHMS: PlainRhythm[] = Array.from({ length: 127 }, (_, n) =>
  WEEKDAYS.filter((_day, bit) => ((n + 1) >> bit) & 1),
).flatMap((days): PlainRhythm[] => [
  { days, everyWeeks: 1 },
  { days, everyWeeks: 2 },
]);

describe('days of the week as a rule', () => {
  test('are the same dates for a year, whichever days and weeks: by hand, by the library, and by the plan', () => {
    for (const rhythm of RHYTHMS) {
      const rule = ruleOfRhythm(rhythm);
      expect(ruleFault(rule)).toBeNull();
      const dates = countedOff(rhythm);
      expect(byLibrary(rule)).toEqual(dates);
      expect(datesOf({ rule, from: FROM }, FIRST, FIRST + 364).map(dateOfDay)).toEqual(dates);
    }
  });

  test('come back as they were', () => {
    for (const rhythm of RHYTHMS) expect(rhythmOfRule({ rule: ruleOfRhythm(rhythm), from: FROM })).toEqual(rhythm);
  });

  test.each([
    ['FREQ=DAILY', { days: [...WEEKDAYS], everyWeeks: 1 }],
    ['RRULE:FREQ=WEEKLY', { days: ['WE'], everyWeeks: 1 }],
    ['FREQ=WEEKLY;BYDAY=SA,WE;WKST=SU', { days: ['WE', 'SA'], everyWeeks: 1 }],
    ['FREQ=DAILY;BYDAY=MO,TU', { days: ['MO', 'TU'], everyWeeks: 1 }],
  ] as const)('%s is understood, and means the same dates', (rule, rhythm) => {
    const read = rhythmOfRule({ rule, from: FROM });
    expect(read).toEqual(rhythm);
    const plain = rule.replace('RRULE:', '');
    expect(byLibrary(plain)).toEqual(countedOff(read!));
  });

  test.each([
    'FREQ=WEEKLY;INTERVAL=3;BYDAY=SA',
    'FREQ=WEEKLY;INTERVAL=2;BYDAY=SU,MO;WKST=SU',
    'FREQ=WEEKLY;BYDAY=SA;COUNT=5',
    'FREQ=WEEKLY;BYDAY=SA;UNTIL=20270601',
    'FREQ=MONTHLY;BYDAY=1SA',
    'FREQ=MONTHLY;BYMONTHDAY=15',
    'FREQ=DAILY;INTERVAL=2',
  ])('%s says more than that', (rule) => {
    expect(ruleFault(rule)).toBeNull();
    expect(rhythmOfRule({ rule, from: FROM })).toBeNull();
  });
});
