import { expect, test } from 'vitest';
import { insertMove } from '../../../../src/engine/search/moves/insert.ts';

const letters = Int32Array.of(10, 11, 12, 13);

test.each([
  [0, 2, [11, 12, 10, 13]],
  [2, 0, [12, 10, 11, 13]],
  [0, 3, [11, 12, 13, 10]],
  [3, 0, [13, 10, 11, 12]],
  [1, 1, [10, 11, 12, 13]],
])('the order at place %d goes to place %d', (from, to, expected) => {
  expect([...insertMove(letters, from, to)]).toEqual(expected);
  expect([...letters]).toEqual([10, 11, 12, 13]);
});
