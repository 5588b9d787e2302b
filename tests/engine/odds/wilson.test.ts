import { describe, expect, test } from 'vitest';
import { wilson } from '../../../src/engine/odds/wilson.ts';

/*
 * R. G. Newcombe, "Two-sided confidence intervals for the single proportion", Statistics in Medicine 17 (1998), 857-872,
 * table I, method 3 (score without continuity correction). The values are from memory; the formula gives each to the
 * last digit.
 */
describe('the interval of Wilson, beside a published table', () => {
  test.each([
    [81, 263, 0.2553, 0.3662],
    [15, 148, 0.0624, 0.1605],
    [0, 20, 0, 0.1611],
    [1, 29, 0.0061, 0.1718],
  ])('%i of %i', (count, of, from, to) => {
    expect(wilson(count, of).from).toBeCloseTo(from, 4);
    expect(wilson(count, of).to).toBeCloseTo(to, 4);
  });

  test('of no case at all it is everything', () => expect(wilson(0, 0)).toEqual({ from: 0, to: 1 }));

  test('all of them is the mirror of none of them', () => {
    expect(wilson(20, 20).from).toBeCloseTo(1 - wilson(0, 20).to, 12);
    expect(wilson(20, 20).to).toBe(1);
  });
});
