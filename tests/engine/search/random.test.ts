import { expect, test } from 'vitest';
import { below, pick, randomFrom } from '../../../src/engine/search/random.ts';

const first = (seed: number, count: number) => {
  const random = randomFrom(seed);
  return Array.from({ length: count }, random);
};

// mulberry32 in 64-bit integers, written down again from its published steps (T. Ettinger 2017, from memory): what counts
// is that the numbers are the same on any machine.
const byBigInt = (seed: number, count: number) => {
  const mask = 0xffffffffn;
  let state = BigInt(seed);
  return Array.from({ length: count }, () => {
    state = (state + 0x6d2b79f5n) & mask;
    let x = ((state ^ (state >> 15n)) * (state | 1n)) & mask;
    x ^= (x + (((x ^ (x >> 7n)) * (x | 61n)) & mask)) & mask;
    return Number(x ^ (x >> 14n)) / 2 ** 32;
  });
};

test.each([0, 1, 42, 2 ** 32 - 1])('from seed %d the numbers are those of mulberry32', (seed) => {
  expect(first(seed, 50)).toEqual(byBigInt(seed, 50));
});

test('they lie in [0, 1), about half of them under a half', () => {
  const numbers = first(7, 10_000);
  expect(numbers.every((x) => x >= 0 && x < 1)).toBe(true);
  // Of 10,000 tosses 5,000 +- 50 are expected; six deviations are 300.
  expect(Math.abs(numbers.filter((x) => x < 0.5).length - 5000)).toBeLessThan(300);
});

test('below and pick reach every value and no other', () => {
  const random = randomFrom(1);
  expect(new Set(Array.from({ length: 200 }, () => below(random, 4)))).toEqual(new Set([0, 1, 2, 3]));
  expect(new Set(Array.from({ length: 200 }, () => pick(random, ['a', 'b'])))).toEqual(new Set(['a', 'b']));
});
