import { expect, test } from 'vitest';
import { clockTyped } from '../../../src/usecases/typed/clock-typed.ts';

test.each([
  ['8:30', '08:30'],
  ['14.30', '14:30'],
  ['2:30 pm', '14:30'],
  ['2:30PM', '14:30'],
  ['8 a.m.', '08:00'],
  ['12 am', '00:00'],
  ['12:05 pm', '12:05'],
])('%s is %s', (typed, clock) => expect(clockTyped(typed)).toBe(clock));

test.each(['', '8', '24:00', '8:60', '13 pm', '0:10 am', 'noon', '8:5'])('"%s" is no time', (typed) =>
  expect(clockTyped(typed)).toBeNull(),
);
