import type { Random } from '../search/random.ts';

/**
 * What is believed of a share after so much was seen of it: a Beta distribution of `bad` and `good`, both above 0. Seen on top
 * are added to them, as the binomial has it. Source: Gelman et al., Bayesian Data Analysis, 3rd ed., section 2.4.
 */
export interface Belief {
  bad: number;
  good: number;
}

/** How often something went wrong in so many cases. */
export interface Seen {
  bad: number;
  of: number;
}

/**
 * The share that is to be expected.
 *
 * Example: `shareOf({ bad: 1, good: 19 })` is 0.05.
 */
export const shareOf = ({ bad, good }: Belief): number => bad / (bad + good);

/**
 * A belief once so much more was seen.
 *
 * Example: `afterSeeing({ bad: 1, good: 19 }, { bad: 3, of: 30 })` is `{ bad: 4, good: 46 }`.
 */
export const afterSeeing = (belief: Belief, { bad, of }: Seen): Belief => ({
  bad: belief.bad + bad,
  good: belief.good + of - bad,
});

/**
 * What is believed of one of many of which nothing was seen by itself: the share of them all, held as firmly as if it had been
 * seen in `weight` cases. So one that was seen seldom leans on the others, and one that was seen often speaks for itself (partial
 * pooling; ibid., chapter 5, with a weight that is set and not fitted).
 *
 * Example: `leaningOn({ bad: 30, good: 570 }, 20)` is `{ bad: 1, good: 19 }`.
 */
export const leaningOn = (all: Belief, weight: number): Belief => {
  const bad = weight * shareOf(all);
  return { bad, good: weight - bad };
};

/** A number of the standard normal distribution (Box and Muller 1958). */
const normal = (random: Random): number => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());

/**
 * A number of the gamma distribution of a shape above 0, scale 1. Source: Marsaglia and Tsang, A simple method for generating
 * gamma variables, ACM Transactions on Mathematical Software 26 (2000), 363-372; below 1 by their note on shape + 1.
 */
const gamma = (random: Random, shape: number): number => {
  if (shape < 1) return gamma(random, shape + 1) * (1 - random()) ** (1 / shape);
  const d = shape - 1 / 3;
  const c = 1 / Math.sqrt(9 * d);
  for (;;) {
    const x = normal(random);
    const v = (1 + c * x) ** 3;
    if (v > 0 && Math.log(1 - random()) < (x * x) / 2 + d - d * v + d * Math.log(v)) return d * v;
  }
};

/** One share as it could be by a belief. */
export const shareDrawn = (random: Random, { bad, good }: Belief): number => {
  const x = gamma(random, bad);
  return x / (x + gamma(random, good));
};
