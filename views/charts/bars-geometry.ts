import { rounded } from './rounded.ts';

/** Sizes of the drawing, in units of the drawing (pixels on a screen). */
export interface BarsSizes {
  width: number;
  /** From the highest bar, or nothing, down to the lowest. */
  height: number;
  /** Above, for the figures; below, for the names. */
  top: number;
  bottom: number;
}

export interface BarsGeometry {
  width: number;
  height: number;
  /** The line of nothing. */
  zeroY: number;
  /** In the order given; null where nothing is known. */
  bars: ({ x: number; y: number; width: number; height: number } | null)[];
  /** The middle of each place, whether it has a bar or not. */
  middles: number[];
}

/** Between two bars, of their place. */
const GAP = 0.3;

/**
 * Bars side by side, up from nothing or down from it.
 *
 * Example: 10 and -10 in 100 by 40 without room around: nothing is at 20, the bars are 35 wide, from 0 and from 20 down.
 */
export const barsGeometry = (values: readonly (number | null)[], sizes: BarsSizes): BarsGeometry => {
  const known = values.filter((value) => value !== null);
  const [most, least] = [Math.max(0, ...known), Math.min(0, ...known)];
  const perUnit = sizes.height / Math.max(1e-9, most - least);
  const yOf = (value: number): number => rounded(sizes.top + (most - value) * perUnit);
  const step = sizes.width / Math.max(1, values.length);
  return {
    width: sizes.width,
    height: sizes.top + sizes.height + sizes.bottom,
    zeroY: yOf(0),
    middles: values.map((_, place) => rounded((place + 0.5) * step)),
    bars: values.map((value, place) => {
      if (value === null) return null;
      const [from, to] = [yOf(Math.max(0, value)), yOf(Math.min(0, value))];
      return {
        x: rounded((place + GAP / 2) * step),
        y: from,
        width: rounded(step * (1 - GAP)),
        height: rounded(to - from),
      };
    }),
  };
};
