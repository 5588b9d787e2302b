import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type FillOption, fillBatch } from '../../../src/engine/pack/fill.ts';

const option = (kg: number, fillMinutes: number, most: number, worth = kg): FillOption => ({
  casting: 0,
  kg,
  fillMinutes,
  most,
  worth,
});

describe('the most worthwhile filling', () => {
  // 14.4 + 10.5 = 24.9 kg beats 2 x 10.5 = 21; 2 x 14.4 = 28.8 is over 27.5.
  test('is not always the heaviest piece twice', () => {
    expect(fillBatch([option(14.4, 7, 2), option(10.5, 6, 3)], 27.5, 20)).toEqual([1, 1]);
  });

  // One bag of 72 inches (common practice, no source): 36 + 36, or 48 + 24; three of 36 are too many.
  test.each([
    [
      [3, 0, 0],
      [2, 0, 0],
    ],
    [
      [0, 1, 1],
      [0, 1, 1],
    ],
    [
      [0, 0, 5],
      [0, 0, 3],
    ],
    [
      [1, 1, 1],
      [0, 1, 1],
    ],
  ])('of a bag for 72 inches, %j of 36, 48 and 24 there: %j', (there, filled) => {
    const options = [36, 48, 24].map((inches, i) => option(inches, 1, there[i]!));
    expect(fillBatch(options, 72, 100)).toEqual(filled);
  });

  test('keeps within the minutes', () => expect(fillBatch([option(5, 7, 9)], 100, 20)).toEqual([2]));

  test('takes the piece that is worth more for its mass', () => {
    expect(fillBatch([option(10, 5, 2, 10), option(10, 5, 2, 15)], 20, 100)).toEqual([0, 2]);
  });

  test('takes as many as there are of what weighs nothing', () => {
    expect(fillBatch([option(0, 5, 3, 1), option(10, 5, 2, 10)], 10, 100)).toEqual([3, 1]);
  });

  test('of nothing, or into nothing, is nothing', () => {
    expect(fillBatch([], 27.5, 20)).toEqual([]);
    expect(fillBatch([option(10, 5, 2)], 9.9, 20)).toEqual([0]);
    expect(fillBatch([option(10, 5, 2)], 20, 4)).toEqual([0]);
  });

  // In floating point 0.1 + 0.2 is more than 0.3.
  test('three tenths fill three tenths', () => expect(fillBatch([option(0.1, 1, 3)], 0.1 + 0.2, 9)).toEqual([3]));
});

const small = fc.record({
  casting: fc.constant(0),
  kg: fc.integer({ min: 1, max: 12 }),
  fillMinutes: fc.integer({ min: 1, max: 6 }),
  most: fc.integer({ min: 0, max: 3 }),
  worth: fc.integer({ min: 1, max: 20 }),
});

/** The most that any counts within the limits are worth. */
const bestByTrying = (options: FillOption[], kg: number, minutes: number, i = 0): number => {
  if (i === options.length) return 0;
  const { most, worth, kg: each, fillMinutes } = options[i]!;
  let best = 0;
  for (let n = 0; n <= most && n * each <= kg && n * fillMinutes <= minutes; n++)
    best = Math.max(best, n * worth + bestByTrying(options, kg - n * each, minutes - n * fillMinutes, i + 1));
  return best;
};

test('is what trying every count finds', () => {
  fc.assert(
    fc.property(
      fc.array(small, { maxLength: 3 }),
      fc.integer({ min: 0, max: 40 }),
      fc.integer({ min: 0, max: 20 }),
      (options, kg, minutes) => {
        const counts = fillBatch(options, kg, minutes);
        const sum = (of: 'kg' | 'fillMinutes' | 'worth') => options.reduce((n, x, i) => n + counts[i]! * x[of], 0);
        expect(counts.every((n, i) => n >= 0 && n <= options[i]!.most)).toBe(true);
        expect(sum('kg')).toBeLessThanOrEqual(kg);
        expect(sum('fillMinutes')).toBeLessThanOrEqual(minutes);
        expect(sum('worth')).toBe(bestByTrying(options, kg, minutes));
      },
    ),
    { numRuns: 500 },
  );
});
