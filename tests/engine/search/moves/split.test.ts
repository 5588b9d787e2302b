import fc from 'fast-check';
import { expect, test } from 'vitest';
import { splitMove } from '../../../../src/engine/search/moves/split.ts';

const letters = Int32Array.of(10, 11, 12, 13);

test.each([
  [2, 0, [12, 10, 11, 12, 13]],
  [0, 4, [10, 11, 12, 13, 10]],
  [3, 1, [10, 13, 11, 12, 13]],
])('from %d to %d an order is in two places', (from, to, expected) => {
  expect([...splitMove(letters, from, to)]).toEqual(expected);
});

test('an order in two places is put together where it was picked up', () => {
  expect([...splitMove(Int32Array.of(12, 10, 11, 12, 13), 3, 0)]).toEqual([10, 11, 12, 13]);
  expect([...splitMove(Int32Array.of(12, 10, 11, 12, 13), 0, 3)]).toEqual([12, 10, 11, 13]);
});

test('no order is lost and none is anywhere three times', () => {
  const steps = fc.array(fc.tuple(fc.nat(1000), fc.nat(1000)), { maxLength: 40 });
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 6 }), steps, (count, moves) => {
      let list: Int32Array = Int32Array.from({ length: count }, (_, i) => i);
      for (const [from, to] of moves) list = splitMove(list, from % list.length, to % list.length);
      const times = Array.from({ length: count }, (_, order) => list.filter((o) => o === order).length);
      expect(times.every((n) => n === 1 || n === 2)).toBe(true);
    }),
    { numRuns: 200 },
  );
});
