import { expect, test } from 'vitest';
import { dateOfDay, dayNumber } from '../../../shared/time.ts';
import { columnsOf, flagsOf, shareText, weeksShown } from '../../../views/first/weeks-shown.ts';

const session = (date: string, hands = 30, moulds = 2) => ({
  date,
  hands: { taken: hands, there: 60 },
  moulds: { taken: moulds, there: 8 },
});
const today = '2027-04-05';

test('each session has a column, filled by its share of hands and of moulds', () => {
  const { each, rows } = weeksShown([session('2027-04-05'), session('2027-04-10', 60, 8)]);
  expect(each).toBe('session');
  expect(columnsOf(rows)).toEqual([
    { day: dayNumber('2027-04-05'), hands: 0.5, moulds: 0.25 },
    { day: dayNumber('2027-04-10'), hands: 1, moulds: 1 },
  ]);
});

test('so many sessions that none could be seen are put together by weeks, which begin on Mondays', () => {
  // From Monday 5 April, every day.
  const days = Array.from({ length: 50 }, (_, at) => dateOfDay(dayNumber(today) + at));
  const { each, rows } = weeksShown(days.map((date) => session(date)));
  expect(each).toBe('week');
  expect(rows.length).toBe(8);
  expect(rows[1]).toEqual({ date: '2027-04-12', hands: { taken: 210, there: 420 }, moulds: { taken: 14, there: 56 } });
});

test('where there is nobody, nothing is taken; shares are in steps of five', () => {
  expect(shareText({ taken: 0, there: 0 })).toBe('0 %');
  expect(shareText({ taken: 32, there: 60 })).toBe('55 %');
});

test('the answer has a flag for each of its dates, and one alone where they are the same', () => {
  const dates = { earliestOn: '2027-04-17', promiseOn: '2027-04-20', promiseOdds: null };
  expect(flagsOf(dates, '2027-04-24', today).map(({ text }) => text)).toEqual([
    'wanted Sat 24 Apr',
    'without time in hand Sat 17 Apr',
    'ready Tue 20 Apr',
  ]);
  expect(flagsOf({ ...dates, promiseOn: null }, null, today).map(({ text }) => text)).toEqual(['ready Sat 17 Apr']);
  // A day that has passed is answered in words.
  expect(flagsOf({ ...dates, promiseOn: dates.earliestOn }, '2027-04-01', today)).toHaveLength(1);
});
