import { expect, test } from 'vitest';
import { dayNumber } from '../../../shared/time.ts';
import { weeksBeside } from '../../../src/engine/season/weeks-beside.ts';

const YEAR = { from: dayNumber('2027-01-01'), to: dayNumber('2027-12-31') };

test('each week stands beside the one 52 weeks before, from the first with anything to the last', () => {
  const days = ['2026-04-07', '2027-04-06', '2027-04-06', '2027-04-11', '2027-04-24'].map(dayNumber);
  expect(weeksBeside(days, { ...YEAR, weekStart: 'MO' })).toEqual([
    { week: '2027-04-05', pieces: 3, before: 1 },
    { week: '2027-04-12', pieces: 0, before: 0 },
    { week: '2027-04-19', pieces: 1, before: 0 },
  ]);
  // In a week from Sunday the 11th is another week's.
  expect(weeksBeside(days, { ...YEAR, weekStart: 'SU' }).slice(0, 2)).toEqual([
    { week: '2027-04-04', pieces: 2, before: 1 },
    { week: '2027-04-11', pieces: 1, before: 0 },
  ]);
  expect(weeksBeside([], { ...YEAR, weekStart: 'MO' })).toEqual([]);
});
