/** A seeded source of numbers in [0, 1): the same seed gives the same numbers on any machine (mulberry32). */
export type Random = () => number;

export const randomFrom = (seed: number): Random => {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let x = Math.imul(state ^ (state >>> 15), state | 1);
    x ^= x + Math.imul(x ^ (x >>> 7), x | 61);
    return ((x ^ (x >>> 14)) >>> 0) / 4294967296;
  };
};

export const below = (random: Random, limit: number): number => Math.floor(random() * limit);

export const pick = <T>(random: Random, list: readonly T[]): T => list[below(random, list.length)]!;
