import { describe, expect, test } from 'vitest';
import { chanceOfGood, spareFor } from '../../../src/engine/odds/spares.ts';

describe('spare pieces, by the binomial', () => {
  // 0.95^12 = 0.5404; with one more 0.95^13 + 13 * 0.05 * 0.95^12 = 0.5133 + 0.3512 = 0.8646.
  test('a set of 12 at 1 in 20: all good, and one more poured', () => {
    expect(chanceOfGood(12, 12, 0.05)).toBeCloseTo(0.54, 3);
    expect(chanceOfGood(12, 13, 0.05)).toBeCloseTo(0.865, 3);
    expect(spareFor('panel-900', 12, 0.05)).toMatchObject({ count: 12, poured: 13 });
  });

  // By hand: of 3 at 1 in 2, 2 or 3 good are 4 of 8 ways; none asked for is certain.
  test.each([
    [2, 3, 0.5, 0.5],
    [0, 3, 0.5, 1],
    [1, 1, 0.3, 0.7],
  ])('%i good of %i at %f', (good, poured, share, chance) => {
    expect(chanceOfGood(good, poured, share)).toBeCloseTo(chance, 12);
  });

  // A single piece at 1 in 50: 0.98 and 0.9996.
  test('is not told where it gains little', () => expect(spareFor('panel-900', 1, 0.02)).toBeNull());
});
