import { expect, test } from 'vitest';
import type { StoredPromise } from '../../../db/stores/change-store.ts';
import { heldUpOf } from '../../../src/usecases/season/held-up.ts';

const on = (order: string, completesOn: string | null, due: string | null = '2027-05-08'): StoredPromise => ({
  ...{ order, customer: null, due, completesOn, daysLate: null, reason: null },
});
const moved = (kind: string, before: StoredPromise[], after: StoredPromise[]) => ({ kind, before, after });

test('what moved orders with a date to a later day is counted by what was recorded, the most days first', () => {
  const changes = [
    moved(
      'mould damaged',
      [on('a', '2027-05-01'), on('b', '2027-05-01')],
      [on('a', '2027-05-08'), on('b', '2027-05-15')],
    ),
    moved('mould mended', [on('a', '2027-05-08')], [on('a', '2027-05-01')]),
    moved('hours of 2027-05-01', [on('a', '2027-05-01')], [on('a', '2027-05-08')]),
    moved('hours set', [on('a', '2027-05-01')], [on('a', '2027-05-08')]),
    // Nobody's date: an order without one, and one that can't be made now.
    moved('mix set', [on('c', '2027-05-01', null)], [on('c', '2027-05-08', null)]),
    moved('time went by', [on('a', '2027-05-01')], [on('a', null)]),
    moved('mix set', [on('a', '2027-05-01')], [on('a', '2027-05-02')]),
    moved('undo', [on('a', '2027-05-01')], [on('a', '2027-05-08')]),
    moved('not to be had', [on('a', '2027-05-01')], [on('a', '2027-05-04')]),
  ];
  expect(heldUpOf(changes)).toEqual([
    { kind: 'moulds', changes: 1, days: 21 },
    { kind: 'hours', changes: 2, days: 14 },
    { kind: 'goods', changes: 1, days: 3 },
    { kind: 'figures', changes: 1, days: 1 },
  ]);
});
