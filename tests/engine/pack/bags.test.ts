import { describe, expect, test } from 'vitest';
import { bagsFor } from '../../../src/engine/pack/bags.ts';

describe('bags of a batch', () => {
  test.each([
    // 24.9 / 27.5 = 0.905 bags: whole halves of a bag make it 1; tenths 1 as well (0.905 is over 0.9).
    [24.9, 27.5, 0.5, 1],
    [13.6, 27.5, 0.5, 0.5],
    [13.8, 27.5, 0.5, 1],
    [27.5, 27.5, 1, 1],
    [55.1, 27.5, 1, 3],
  ])('%f kg of %f to a bag, in steps of %f: %f', (kg, yieldKg, step, bags) => {
    expect(bagsFor(kg, yieldKg, step)).toBe(bags);
  });

  // Three pieces of 0.1 kg add up to 0.30000000000000004: one that opens a fourth bag for that buys a bag too many.
  test('a sum that is a hair over opens no other bag, and a gram over does', () => {
    expect(bagsFor(0.1 + 0.1 + 0.1, 0.1, 1)).toBe(3);
    expect(bagsFor(27.501, 27.5, 1)).toBe(2);
  });

  test('none for pieces without weight', () => expect(bagsFor(0, 27.5, 0.5)).toBe(0));
});
