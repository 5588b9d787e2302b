import { expect, test } from 'vitest';
import { promisesKept } from '../../../src/engine/season/promises-kept.ts';

test('a date is kept on the day or before it; without one nothing was promised', () => {
  const over = (handedOverOn: string, promisedOn: string | null) => ({ handedOverOn, promisedOn });
  const orders = [
    ...[over('2027-05-08', '2027-05-08'), over('2027-05-01', '2027-05-08'), over('2027-05-10', '2027-05-08')],
    ...[over('2027-05-15', '2027-05-08'), over('2027-05-08', null)],
  ];
  expect(promisesKept(orders)).toEqual({ promised: 4, kept: 2, daysLate: [7, 2] });
});
