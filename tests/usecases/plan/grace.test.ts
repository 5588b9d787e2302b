import { describe, expect, test } from 'vitest';
import { minuteOf } from '../../../shared/time.ts';
import { graceNow, nextGraceEnd } from '../../../src/usecases/plan/grace.ts';
import { saturday } from '../../support/planned-yard.ts';
import { smallYard } from '../../support/small-yard.ts';

/** The small yard works on Saturdays from 8:00 to 12:00, and here in the evening until 23:30 as well. */
const yardAt = (now: string, evening = '22:00') => {
  const base = smallYard();
  const extra = [{ date: '2027-04-10', start: evening, end: '23:30' }];
  return smallYard({ yard: { ...base.yard, now }, extra });
};
const endOf = (now: string, evening?: string) => graceNow(yardAt(now, evening))?.until ?? null;

describe('the hour after a session', () => {
  test.each([
    ['11:59', null],
    ['12:00', '13:00'],
    ['12:59', '13:00'],
    ['13:00', null],
  ])('at %s lasts until %s', (clock, until) => {
    expect(endOf(saturday(clock))).toBe(until && minuteOf(saturday(until)));
  });

  test('ends when the next session begins', () => {
    expect(endOf(saturday('12:10'), '12:30')).toBe(minuteOf(saturday('12:30')));
    expect(endOf(saturday('12:30'), '12:30')).toBeNull();
  });

  test('goes on past midnight', () => {
    expect(endOf('2027-04-11T00:10:00+01:00')).toBe(minuteOf('2027-04-11T00:30:00+01:00'));
    expect(endOf('2027-04-11T00:30:00+01:00')).toBeNull();
  });

  test.each([
    ['07:00', '13:00'],
    ['09:00', '13:00'],
    ['12:30', '13:00'],
    ['13:00', '24:30'],
  ])('seen from %s ends next at %s', (clock, end) => {
    const minute = end === '24:30' ? minuteOf('2027-04-11T00:30:00+01:00') : minuteOf(saturday(end));
    expect(nextGraceEnd(yardAt(saturday(clock)))).toBe(minute);
  });

  test('ends never where nobody works', () => {
    const yard = smallYard({ work: [] });
    expect(nextGraceEnd(yard)).toBe(Number.POSITIVE_INFINITY);
    expect(graceNow(yard)).toBeNull();
  });
});
