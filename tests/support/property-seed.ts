import fc from 'fast-check';

const PROPERTY_SEED = Number(process.env.PROPERTY_SEED ?? 1);

/**
 * One seed for all properties, so that a run of the tests says the same as the run before; another one for those who want
 * to hunt: `PROPERTY_SEED=7 npm test`. What a hunt finds gets a case of its own.
 */
fc.configureGlobal({ seed: PROPERTY_SEED });

/** Yards between one hunt and the next: more than any test asks for, and a multiple of every cycle of kinds. */
const YARDS_APART = 1_000_020;

/**
 * Seeds for `count` random yards: 0, 1, 2 … or on from `from`, and in a hunt as many others. For what holds on any yard;
 * what was measured on certain yards names their seeds itself.
 *
 * With `PROPERTY_SEED=2`, `yardSeeds(2, 5)` is 1000025 and 1000026.
 */
export const yardSeeds = (count: number, from = 0): number[] =>
  Array.from({ length: count }, (_, i) => from + i + (PROPERTY_SEED - 1) * YARDS_APART);
