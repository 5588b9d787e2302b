import { expect, test } from 'vitest';
import { fixedHours } from '../../../db/stores/yard-store.ts';
import { fixHours } from '../../../src/usecases/yard/fix-hours.ts';
import { doneOf, refusalOf } from '../../support/outcomes.ts';
import { yardContext } from '../../support/yard-context.ts';

test.each([
  [0, 'Sessions are fixed only once they begin'],
  [1, 'Sessions are fixed 1 hour before they begin'],
  [336, 'Sessions are fixed 336 hours before they begin'],
])('%i hours are kept', async (hours, words) => {
  const context = await yardContext();
  expect(doneOf(await fixHours(context, hours)).words).toBe(words);
  expect(await context.database.read(fixedHours)).toBe(hours);
});

test.each([null, 337])('%j is refused, and what was set stays', async (hours) => {
  const context = await yardContext();
  const before = await context.database.read(fixedHours);
  expect(refusalOf(await fixHours(context, hours))).toBe('hours: How many hours? Write a whole number, 0 to 336.');
  expect(await context.database.read(fixedHours)).toBe(before);
});
