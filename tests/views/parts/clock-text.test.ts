import { describe, expect, test } from 'vitest';
import { byClock, fromClock, hoursText } from '../../../views/parts/clock-text.ts';

const at = (clock: string, date = '2027-04-10') => `${date}T${clock}:00+01:00`;

describe('steps of five minutes', () => {
  test.each([
    ['10:40', '10:40', '10:40'],
    ['10:41', '10:45', '10:40'],
    ['10:44', '10:45', '10:40'],
    ['08:57', '9:00', '8:55'],
    ['23:58', '24:00', '23:55'],
    ['00:01', '0:05', '0:00'],
  ])('%s may be from %s and has to be by %s', (clock, from, by) => {
    expect([fromClock(at(clock)), byClock(at(clock))]).toEqual([from, by]);
  });
});

test('hours that end with the day end at 24:00', () => {
  expect(hoursText({ start: at('18:00'), end: at('20:30') })).toBe('18:00 to 20:30');
  expect(hoursText({ start: at('18:00'), end: at('00:00', '2027-04-11') })).toBe('18:00 to 24:00');
  expect(hoursText({ start: at('18:00'), end: at('02:00', '2027-04-11') })).toBe('18:00 to 2:00');
});
