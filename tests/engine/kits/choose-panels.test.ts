import { expect, test } from 'vitest';
import { choosePanels } from '../../../src/engine/kits/choose-panels.ts';

const way = (...lengths: number[]) => ({
  turns: [],
  needs: lengths.map((longNano) => ({ longNano, stepNano: 0, longIn: 0 as const })),
});
const unlimited = () => ({ steps: 0, most: Number.POSITIVE_INFINITY });
const longRuns = (chosen: ReturnType<typeof choosePanels>) => chosen?.runs.map(({ long }) => long);

test('two of 900 are of one length, 1200 and 600 of two', () => {
  expect(longRuns(choosePanels([way(1800)], [1200, 900, 600], unlimited()))).toEqual([[900, 900]]);
});

test('but where a side is 600 anyway, and none 900, both ways have two lengths and the longer is taken', () => {
  expect(longRuns(choosePanels([way(1800, 600)], [1200, 900, 600], unlimited()))).toEqual([[1200, 600], [600]]);
});

test('fewer panels come before fewer lengths', () => {
  expect(longRuns(choosePanels([way(1800)], [1200, 600, 300], unlimited()))).toEqual([[1200, 600]]);
});

test('of several ways to turn the corners the one with the fewest panels', () => {
  expect(longRuns(choosePanels([way(1500), way(1200)], [1200, 900, 600], unlimited()))).toEqual([[1200]]);
});

test('what can not be made is none', () => {
  expect(choosePanels([way(1000, 600)], [1200, 600], unlimited())).toBeNull();
});
