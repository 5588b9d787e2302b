import { rounded } from './rounded.ts';

/** Sizes of the drawing, in units of the drawing (pixels on a screen). */
export interface SharesSizes {
  width: number;
  /** Of one row, its bar, and the room for names to the left and figures to the right. */
  row: number;
  bar: number;
  names: number;
  figures: number;
}

interface Part {
  x: number;
  width: number;
}

export interface SharesGeometry {
  width: number;
  height: number;
  bar: number;
  /** A row for each list of parts: the middle of it, its upper edge, its parts one after another, and where they end. */
  rows: { middle: number; y: number; parts: Part[]; end: number }[];
}

/**
 * Rows of bars, each made of parts one after another, the longest as long as there is room for.
 *
 * Example: 3 and 1, and 2, in 100 by rows of 20 with 10 of names and 10 of figures: 60 and 20, and 40 long from 10 on.
 */
export const sharesGeometry = (
  lists: readonly (readonly number[])[],
  { width, row, bar, names, figures }: SharesSizes,
): SharesGeometry => {
  const sum = (list: readonly number[]) => list.reduce((all, one) => all + one, 0);
  const perUnit = (width - names - figures) / Math.max(1e-9, ...lists.map(sum));
  return {
    ...{ width, height: row * lists.length, bar },
    rows: lists.map((list, place) => {
      const middle = (place + 0.5) * row;
      const parts = list.map((amount, part) => ({
        x: rounded(names + sum(list.slice(0, part)) * perUnit),
        width: rounded(amount * perUnit),
      }));
      return {
        middle: rounded(middle),
        y: rounded(middle - bar / 2),
        parts,
        end: rounded(names + sum(list) * perUnit),
      };
    }),
  };
};
