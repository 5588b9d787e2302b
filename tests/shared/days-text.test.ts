import { expect, test } from 'vitest';
import { daysText } from '../../shared/days-text.ts';

test.each([
  [0, '0 days'],
  [1, '1 day'],
  [27, '27 days'],
  [28, '4 weeks'],
  [120, '17 weeks'],
  [130, '4 months'],
  [700, '23 months'],
  [731, '2 years'],
  [2579, '7 years'],
])('%i days are %s', (days, text) => expect(daysText(days)).toBe(text));
