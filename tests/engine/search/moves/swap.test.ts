import { expect, test } from 'vitest';
import { swapMove } from '../../../../src/engine/search/moves/swap.ts';

const letters = Int32Array.of(10, 11, 12, 13);

test.each([
  [0, 2, [12, 11, 10, 13]],
  [3, 0, [13, 11, 12, 10]],
  [1, 1, [10, 11, 12, 13]],
])('the orders at %d and %d change places', (a, b, expected) => {
  expect([...swapMove(letters, a, b)]).toEqual(expected);
  expect([...letters]).toEqual([10, 11, 12, 13]);
});
