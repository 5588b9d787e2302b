import { expect, test } from 'vitest';
import { allTurns, reachOf } from '../../../src/engine/kits/corners.ts';
import { SIDES } from '../../../src/engine/kits/outline.ts';

const through = (corners: number) => Array.from({ length: corners }, () => true);

test('there are sixteen ways to turn four corners, each different, first every side through where it starts', () => {
  expect(allTurns(4)[0]).toEqual(through(4));
  expect(new Set(allTurns(4).map((turns) => turns.join())).size).toBe(16);
  expect(allTurns(0)).toEqual([[]]);
});

test('a side that runs through at its start stops a thickness short at its end, and the other way round in the next course', () => {
  expect(reachOf(SIDES.rectangle, 0, through(4), 0, 40)).toEqual({ start: 0, end: -40 });
  expect(reachOf(SIDES.rectangle, 0, through(4), 1, 40)).toEqual({ start: -40, end: 0 });
});

test('at an inner corner the side that runs through reaches a thickness beyond', () => {
  // Side 1 of an L ends at the inner corner, side 2 starts there.
  expect(reachOf(SIDES.L, 1, through(6), 0, 40)).toEqual({ start: 0, end: 0 });
  expect(reachOf(SIDES.L, 1, through(6), 1, 40)).toEqual({ start: -40, end: 40 });
  expect(reachOf(SIDES.L, 2, through(6), 0, 40)).toEqual({ start: 40, end: -40 });
});

test('a row ends where it ends', () => {
  expect(reachOf(SIDES.row, 0, [], 0, 40)).toEqual({ start: 0, end: 0 });
  expect(reachOf(SIDES.row, 0, [], 1, 40)).toEqual({ start: 0, end: 0 });
});
