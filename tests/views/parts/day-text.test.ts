import { describe, expect, test } from 'vitest';
import { fullDayWords } from '../../../shared/day-words.ts';
import { countText } from '../../../shared/plural.ts';
import { clockText, dayHeading, dayText, onDayText, spareText } from '../../../views/parts/day-text.ts';

/* 8 May 2027 is a Saturday (ISO week 18 of 2027). */
describe('a date', () => {
  test.each([
    ['2027-05-08', '2027-04-05', 'Sat 8 May'],
    ['2028-01-01', '2027-12-31', 'Sat 1 Jan'],
    ['2026-12-31', '2027-01-01', 'Thu 31 Dec'],
    ['2028-02-29', '2027-04-05', 'Tue 29 Feb 2028'],
    ['2026-05-08', '2027-04-05', 'Fri 8 May 2026'],
  ])('%s seen on %s is %s', (date, today, text) => expect(dayText(date, today)).toBe(text));

  test.each([
    ['2027-04-05', 'today'],
    ['2027-04-06', 'tomorrow'],
    ['2027-04-11', 'on Sunday'],
    ['2027-04-12', 'on Mon 12 Apr'],
    ['2027-04-04', 'on Sun 4 Apr'],
  ])('%s is "%s" in a sentence of Monday 5 April', (date, text) => expect(onDayText(date, '2027-04-05')).toBe(text));

  test('says all of itself in a field', () => expect(fullDayWords('2027-05-08')).toBe('Sat 8 May 2027'));

  test('heads what happens on it', () => {
    expect(dayHeading('2027-04-05', '2027-04-05')).toBe('Today, Mon 5 Apr');
    expect(dayHeading('2027-04-06', '2027-04-05')).toBe('Tomorrow, Tue 6 Apr');
    expect(dayHeading('2027-04-07', '2027-04-05')).toBe('Wed 7 Apr');
  });
});

test.each([
  ['2027-05-08', '2027-05-10', '2 days to spare'],
  ['2027-05-08', '2027-05-09', '1 day to spare'],
  ['2027-05-08', '2027-05-08', 'on the day'],
  ['2027-05-08', '2027-05-01', '7 days late'],
  // The clocks go forward on 28 March 2027 in Europe: still one day.
  ['2027-03-28', '2027-03-29', '1 day to spare'],
])('ready %s for %s is %s', (finish, due, text) => expect(spareText(finish, due)).toBe(text));

test.each([
  ['2027-04-05T07:33:00+01:00', '7:35'],
  ['2027-04-05T07:32:00+01:00', '7:30'],
  ['2027-04-05T09:58:00+01:00', '10:00'],
  ['2027-04-05T23:58:00+01:00', '24:00'],
  ['2027-04-05T00:02:00+01:00', '0:00'],
])('%s shows as %s', (instant, text) => expect(clockText(instant)).toBe(text));

test('one is not many', () => {
  expect([countText(1, 'day'), countText(0, 'day'), countText(2, 'box', 'boxes')]).toEqual([
    '1 day',
    '0 days',
    '2 boxes',
  ]);
});
