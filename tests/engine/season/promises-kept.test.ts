import { expect, test } from 'vitest';
import { promisesKept } from '../../../src/engine/season/promises-kept.ts';

test('a date is kept on the day or before it; without one nothing was promised', () => {
  const over = (handedOverOn: string, promisedOn: string | null, firstPromisedOn = promisedOn) => ({
    ...{ handedOverOn, promisedOn, firstPromisedOn },
  });
  const orders = [
    ...[over('2027-05-08', '2027-05-08'), over('2027-05-01', '2027-05-08'), over('2027-05-10', '2027-05-08')],
    ...[over('2027-05-15', '2027-05-08'), over('2027-05-08', null)],
    // Moved from the 1st to the day on which it went out; one whose first date is not on record; and one whose date was taken off.
    ...[over('2027-05-08', '2027-05-08', '2027-05-01'), over('2027-05-08', '2027-05-08', null)],
    over('2027-05-08', null, '2027-05-08'),
  ];
  expect(promisesKept(orders)).toEqual({ promised: 6, kept: 4, daysLate: [7, 2], first: { promised: 6, kept: 3 } });
});
