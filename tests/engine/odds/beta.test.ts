import { describe, expect, test } from 'vitest';
import { afterSeeing, leaningOn, shareDrawn, shareOf } from '../../../src/engine/odds/beta.ts';
import { randomFrom } from '../../../src/engine/search/random.ts';

/*
 * Gelman et al., Bayesian Data Analysis, 3rd ed., section 2.4, placenta previa: 437 girls of 980 births. With a uniform prior,
 * Beta(1, 1), the posterior is Beta(438, 544): mean 0.446, standard deviation 0.016. The figures are from memory; both follow
 * from the formulas by hand.
 */
const births = afterSeeing({ bad: 1, good: 1 }, { bad: 437, of: 980 });

const drawn = (belief: { bad: number; good: number }, count: number, seed: number): number[] => {
  const random = randomFrom(seed);
  return Array.from({ length: count }, () => shareDrawn(random, belief));
};
const meanOf = (list: readonly number[]) => list.reduce((sum, x) => sum + x, 0) / list.length;

describe('what is believed of a share', () => {
  test('is the guess and what was seen on top, as in a published example', () => {
    expect(births).toEqual({ bad: 438, good: 544 });
    expect(shareOf(births)).toBeCloseTo(0.446, 3);
  });

  // Mean a / (a + b), variance ab / ((a + b)^2 (a + b + 1)); 20,000 draws: four standard errors.
  test.each([
    [438, 544],
    [1, 19],
    [0.4, 7.6],
  ])('draws of Beta(%f, %f) have its mean and its spread', (bad, good) => {
    const shares = drawn({ bad, good }, 20_000, 7);
    const mean = bad / (bad + good);
    const variance = (mean * (1 - mean)) / (bad + good + 1);
    expect(Math.abs(meanOf(shares) - mean)).toBeLessThan(4 * Math.sqrt(variance / 20_000));
    expect(meanOf(shares.map((x) => (x - mean) ** 2)) / variance).toBeCloseTo(1, 1);
  });

  test('the same seed draws the same', () =>
    expect(drawn({ bad: 2, good: 30 }, 5, 3)).toEqual(drawn({ bad: 2, good: 30 }, 5, 3)));

  // 30 of 600 is 0.05; with 20 turns of it, 4 bad of 10 come to 5 / 30, and 40 of 1,000 to 41 / 1,020.
  test('what was seen seldom leans on all the others, and what was seen often hardly does', () => {
    const all = { bad: 30, good: 570 };
    expect(shareOf(leaningOn(all, 20))).toBeCloseTo(0.05, 12);
    expect(shareOf(afterSeeing(leaningOn(all, 20), { bad: 4, of: 10 }))).toBeCloseTo(5 / 30, 12);
    expect(shareOf(afterSeeing(leaningOn(all, 20), { bad: 40, of: 1000 }))).toBeCloseTo(41 / 1020, 12);
  });
});
