import { describe, expect, test } from 'vitest';
import { fewestBySum, panelsInRun, runOfFew } from '../../../src/engine/kits/fewest-panels.ts';

const run = (longNano: number, stepNano = 0) => ({ longNano, stepNano, longIn: 0 as const });
const unlimited = () => ({ steps: 0, most: Number.POSITIVE_INFINITY });

test('every sum comes with the fewest panels that make it', () => {
  expect([...fewestBySum([900, 600], 1800)].sort(([a], [b]) => a - b)).toEqual([
    ...[
      [0, 0],
      [600, 1],
      [900, 1],
      [1200, 2],
      [1500, 2],
      [1800, 2],
    ],
  ]);
});

test('taking the longest first is not always fewest: 1800 of 1000, 900 and 400 is two of 900', () => {
  expect(fewestBySum([1000, 900, 400], 1800).get(1800)).toBe(2);
});

describe('a run', () => {
  const lengths = [1200, 1120, 600];
  const fewest = fewestBySum(lengths, 3000);

  test('that is the same in every course', () => {
    expect(panelsInRun(run(1800), lengths, fewest)).toBe(2);
    expect(runOfFew(run(1800), 2, lengths, fewest, unlimited())).toEqual({ long: [1200, 600], short: [1200, 600] });
    expect(panelsInRun(run(1900), lengths, fewest)).toBeUndefined();
  });

  test('that steps back has one panel shorter by the step in every other course', () => {
    expect(panelsInRun(run(1800, 80), lengths, fewest)).toBe(2);
    expect(runOfFew(run(1800, 80), 2, lengths, fewest, unlimited())).toEqual({ long: [1200, 600], short: [1120, 600] });
    expect(panelsInRun(run(600, 80), lengths, fewest)).toBeUndefined();
  });

  test('of a few of the lengths only where they do with as few panels', () => {
    expect(runOfFew(run(1800), 2, [600], fewest, unlimited())).toBeNull();
    expect(runOfFew(run(600), 1, [600], fewest, unlimited())).toEqual({ long: [600], short: [600] });
  });

  test('of no length at all is none', () => {
    expect(panelsInRun(run(0), lengths, fewest)).toBeUndefined();
  });
});
