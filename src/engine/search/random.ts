/** A seeded source of numbers in [0, 1): the same seed gives the same numbers on any machine (mulberry32). */
export type Random = () => number;

/**
 * A source of its own for each seed, of which the lowest 32 bits count. Source: mulberry32, from memory.
 *
 * Example: two of one seed agree for ever; `randomFrom(1)()` is 0.627.
 */
export const randomFrom = (seed: number): Random => {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let x = Math.imul(state ^ (state >>> 15), state | 1);
    x ^= x + Math.imul(x ^ (x >>> 7), x | 61);
    return ((x ^ (x >>> 14)) >>> 0) / 4294967296;
  };
};

/**
 * A whole number from 0 up to, not including, `limit`.
 *
 * Example: `below(() => 0.5, 7)` is 3.
 */
export const below = (random: Random, limit: number): number => Math.floor(random() * limit);

/**
 * One of the list, which may not be empty, each as likely as any other.
 *
 * Example: `pick(() => 0.99, ['a', 'b'])` is "b".
 */
export const pick = <T>(random: Random, list: readonly T[]): T => list[below(random, list.length)]!;
