import fc from 'fast-check';
import { expect, test } from 'vitest';
import { blockMove } from '../../../../src/engine/search/moves/block.ts';
import { insertMove } from '../../../../src/engine/search/moves/insert.ts';

const letters = Int32Array.of(10, 11, 12, 13, 14);

test.each([
  [1, 2, 0, [11, 12, 10, 13, 14]],
  [0, 2, 3, [12, 13, 14, 10, 11]],
  [2, 3, 2, [10, 11, 12, 13, 14]],
  [0, 5, 0, [10, 11, 12, 13, 14]],
])('from %d, %d of them, to %d', (from, length, to, expected) => {
  expect([...blockMove(letters, from, length, to)]).toEqual(expected);
});

test('of one order is an insertion; of any number it loses none', () => {
  const moves = fc.integer({ min: 1, max: 8 }).chain((n) =>
    fc.tuple(fc.constant(n), fc.integer({ min: 1, max: n })).chain(([count, length]) =>
      fc.record({
        count: fc.constant(count),
        length: fc.constant(length),
        from: fc.integer({ min: 0, max: count - length }),
        to: fc.integer({ min: 0, max: count - length }),
      }),
    ),
  );
  fc.assert(
    fc.property(moves, ({ count, length, from, to }) => {
      const sequence = Int32Array.from({ length: count }, (_, i) => i);
      expect(blockMove(sequence, from, 1, to)).toEqual(insertMove(sequence, from, to));
      expect([...blockMove(sequence, from, length, to)].sort((a, b) => a - b)).toEqual([...sequence]);
    }),
    { numRuns: 200 },
  );
});
