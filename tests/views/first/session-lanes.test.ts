import { expect, test } from 'vitest';
import { inLanes } from '../../../views/first/session-lanes.ts';

const spell = (start: number, end: number) => ({ start, end });

test('what goes on at the same time stands in lanes of its own, as few as it takes', () => {
  const [first, beside, next, after] = [spell(0, 10), spell(5, 15), spell(10, 20), spell(15, 30)];
  expect(inLanes([first, beside, next, after])).toEqual([
    [first, next],
    [beside, after],
  ]);
  expect(inLanes([])).toEqual([]);
});
