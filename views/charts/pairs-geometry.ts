import type { BarsSizes } from './bars-geometry.ts';
import { rounded } from './rounded.ts';

interface Bar {
  x: number;
  y: number;
  width: number;
  height: number;
}

/** Two amounts side by side: the earlier one to the left; an amount of nothing has no bar. */
interface Pair {
  before: Bar | null;
  now: Bar | null;
  /** Of its place. */
  middle: number;
}

export interface PairsGeometry {
  width: number;
  height: number;
  /** The line that bars stand on. */
  baseY: number;
  pairs: Pair[];
  /** The highest bar: its amount, and where it may be written above it; null where there is none. */
  most: { amount: number; x: number; y: number } | null;
}

/** Between two pairs, of their place. */
const GAP = 0.24;
/** From a bar up to its figure. */
const ABOVE = 4;

/**
 * Pairs of bars side by side, all up from one line; amounts are 0 or more.
 *
 * Example: 5 before and 10 now in 100 by 40 without room around: bars 38 wide, 20 high from 12 on and 40 high from 50 on.
 */
export const pairsGeometry = (
  amounts: readonly { before: number; now: number }[],
  { width, height, top, bottom }: BarsSizes,
): PairsGeometry => {
  const highest = Math.max(0, ...amounts.flatMap(({ before, now }) => [before, now]));
  const step = width / Math.max(1, amounts.length);
  const barWidth = (step * (1 - GAP)) / 2;
  const baseY = top + height;
  const bar = (amount: number, x: number): Bar | null => {
    if (amount <= 0) return null;
    const tall = (height * amount) / highest;
    return { x: rounded(x), y: rounded(baseY - tall), width: rounded(barWidth), height: rounded(tall) };
  };
  const pairs = amounts.map(({ before, now }, place) => {
    const middle = (place + 0.5) * step;
    return { before: bar(before, middle - barWidth), now: bar(now, middle), middle: rounded(middle) };
  });
  const bars = pairs.flatMap(({ before, now }) => [before, now].filter((one) => one !== null));
  const tallest = bars.find(({ y }) => y === Math.min(...bars.map((one) => one.y)));
  return {
    ...{ width, height: top + height + bottom, baseY, pairs },
    most: tallest
      ? { amount: highest, x: rounded(tallest.x + tallest.width / 2), y: rounded(tallest.y - ABOVE) }
      : null,
  };
};
