import { describe, expect, test } from 'vitest';
import { effectOf, movedOnly, promisesMoved } from '../../../src/usecases/plan/promises-moved.ts';

const promise = (
  order: string,
  completesOn: string | null,
  due: string | null = null,
  reason: string | null = null,
) => ({
  order,
  customer: order.toUpperCase(),
  due,
  completesOn,
  daysLate: completesOn === null ? null : 0,
  reason,
});

describe('the orders that moved', () => {
  const before = [
    promise('a', '2027-04-10'),
    promise('b', '2027-04-10'),
    promise('gone', '2027-04-10'),
    promise('d', null, null, 'x'),
  ];
  const after = [
    promise('a', '2027-04-10'),
    promise('b', null, null, 'no mould'),
    promise('new', '2027-04-10'),
    promise('d', '2027-04-17'),
  ];

  test('are those of another day, and those that cannot be made any more or can again; not those that came or went', () => {
    expect(promisesMoved(before, after)).toEqual([
      {
        order: 'b',
        customer: 'B',
        from: '2027-04-10',
        to: null,
        daysLate: null,
        isWanted: false,
        reason: 'no mould',
        kind: 'promise',
      },
      {
        order: 'd',
        customer: 'D',
        from: null,
        to: '2027-04-17',
        daysLate: 0,
        isWanted: false,
        reason: null,
        kind: 'promise',
      },
    ]);
  });

  test('are none where all of it is there, and only the days go by until it is handed over', () => {
    const there = (on: string) => ({ ...promise('a', on, '2027-04-10'), isThere: true as const });
    expect(promisesMoved([there('2027-04-10')], [there('2027-04-17')])).toEqual([]);
    expect(promisesMoved([there('2027-04-10')], [promise('a', '2027-04-17', '2027-04-10')])).toHaveLength(1);
    expect(promisesMoved([promise('a', '2027-04-10', '2027-04-10')], [there('2027-04-17')])).toHaveLength(1);
  });

  test('are the same when only they are on record', () => {
    const recorded = movedOnly(before, after);
    expect(recorded.before.map(({ order }) => order)).toEqual(['b', 'd']);
    expect(promisesMoved(recorded.before, recorded.after)).toEqual(promisesMoved(before, after));
  });
});

describe('a move', () => {
  const kind = (from: string, to: string, due: string | null) =>
    promisesMoved([promise('a', from, due)], [promise('a', to, due)])[0]?.kind;

  test.each([
    ['2027-04-10', '2027-04-17', '2027-04-24', 'planned', 'leaves 7 of 14 days to spare'],
    ['2027-04-10', '2027-04-17', '2027-04-17', 'spare', 'leaves none of 7 days to spare'],
    ['2027-04-17', '2027-04-10', '2027-04-17', 'planned', 'wins 7 days to spare'],
    ['2027-04-10', '2027-04-17', '2027-04-14', 'promise', 'makes it 3 days late'],
    ['2027-04-17', '2027-04-24', '2027-04-10', 'promise', 'makes it 14 days late in place of 7'],
    ['2027-04-24', '2027-04-17', '2027-04-17', 'promise', 'keeps the date again'],
    ['2027-04-10', '2027-06-17', null, 'planned', 'is of an order without a date'],
  ])('from %s to %s with %s given is %s: it %s', (from, to, due, expected, _means) => {
    expect(kind(from, to, due)).toBe(expected);
  });
});

test('several changes after one another are told as one, and what was put right again not at all', () => {
  const change = (order: string, from: string, to: string) => ({
    before: [promise(order, from)],
    after: [promise(order, to)],
  });
  const effect = effectOf([
    change('a', '2027-04-10', '2027-04-17'),
    change('b', '2027-04-10', '2027-04-24'),
    change('b', '2027-04-24', '2027-04-10'),
    change('a', '2027-04-17', '2027-04-24'),
  ]);
  expect(effect).toMatchObject([{ order: 'a', from: '2027-04-10', to: '2027-04-24' }]);
});
