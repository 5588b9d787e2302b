import { expect, test } from 'vitest';
import { promisesMoved } from '../../src/usecases/promises-moved.ts';

const promise = (order: string, completesOn: string | null, reason: string | null = null) => ({
  order,
  customer: order.toUpperCase(),
  completesOn,
  daysLate: completesOn === null ? null : 0,
  reason,
});

test('orders that stayed, came or went are no moves; one that cannot be made any more, or can again, is', () => {
  const before = [
    promise('a', '2027-04-10'),
    promise('b', '2027-04-10'),
    promise('gone', '2027-04-10'),
    promise('d', null, 'x'),
  ];
  const after = [
    promise('a', '2027-04-10'),
    promise('b', null, 'no mould'),
    promise('new', '2027-04-10'),
    promise('d', '2027-04-17'),
  ];
  expect(promisesMoved(before, after)).toEqual([
    { order: 'b', customer: 'B', from: '2027-04-10', to: null, daysLate: null, reason: 'no mould' },
    { order: 'd', customer: 'D', from: null, to: '2027-04-17', daysLate: 0, reason: null },
  ]);
});
