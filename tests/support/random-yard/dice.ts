/** Chance that depends on a seed alone, so that a yard made by it can be made again. */
export interface Dice {
  /** From 0 up to, but not including, 1. */
  unit(): number;
  /** A whole number from `least` to `most`, both included. */
  whole(least: number, most: number): number;
  /** A multiple of `step` from `least` to `most`. */
  step(least: number, most: number, step: number): number;
  chance(probability: number): boolean;
  pick<T>(items: readonly T[]): T;
  /** `count` different items in a random order; fewer when there are no more. */
  some<T>(items: readonly T[], count: number): T[];
}

/** Mulberry32: 32 bits of state, good enough to vary yards with. */
const mulberry32 = (seed: number): (() => number) => {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
};

export const diceOf = (seed: number): Dice => {
  const unit = mulberry32(Math.imul(seed + 1, 2_654_435_761));
  const whole = (least: number, most: number) => least + Math.floor(unit() * (most - least + 1));
  const pick = <T>(items: readonly T[]): T => items[whole(0, items.length - 1)]!;
  return {
    unit,
    whole,
    step: (least, most, step) => least + step * whole(0, Math.floor((most - least) / step)),
    chance: (probability) => unit() < probability,
    pick,
    some: (items, count) => {
      const left = [...items];
      const taken = Math.min(count, left.length);
      return Array.from({ length: taken }, () => left.splice(whole(0, left.length - 1), 1)[0]!);
    },
  };
};
