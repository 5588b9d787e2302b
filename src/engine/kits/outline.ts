import type { Faces, KitShape } from '../../../shared/kit-size.ts';

/** A plan in mm. x runs to the right, y down the page. `cut…` is the corner an L leaves out, at the top right. */
export interface PlanSize {
  lengthMm: number;
  /** 0 for a row. */
  widthMm: number;
  cutLengthMm: number;
  cutWidthMm: number;
}

/** x runs to the right, y down the page. */
export type Axis = 'x' | 'y';

/** Two sides meet there: they turn towards the inside, or away from it at the inner corner of an L. A row just ends. */
export type Corner = 'outer' | 'inner' | 'end';

/** One straight side of a shape as one walks round it, measured along its outer face. */
export interface Side {
  axis: Axis;
  /** Forwards along its axis (to the right, down), or back. */
  forwards: boolean;
  /** How its length follows from the size: so many times the whole, so many times the corner left out. */
  whole: 0 | 1;
  cut: -1 | 0 | 1;
  start: Corner;
  end: Corner;
}

const side = (axis: Axis, forwards: boolean, whole: 0 | 1, cut: -1 | 0 | 1, start: Corner, end: Corner): Side => ({
  ...{ axis, forwards, whole, cut, start, end },
});

/** The sides of each shape in the order in which one walks round it, the inside to the right; the first starts at 0, 0. */
export const SIDES: Readonly<Record<KitShape, readonly Side[]>> = {
  row: [side('x', true, 1, 0, 'end', 'end')],
  rectangle: [
    side('x', true, 1, 0, 'outer', 'outer'),
    side('y', true, 1, 0, 'outer', 'outer'),
    side('x', false, 1, 0, 'outer', 'outer'),
    side('y', false, 1, 0, 'outer', 'outer'),
  ],
  L: [
    side('x', true, 1, -1, 'outer', 'outer'),
    side('y', true, 0, 1, 'outer', 'inner'),
    side('x', true, 0, 1, 'inner', 'outer'),
    side('y', true, 1, -1, 'outer', 'outer'),
    side('x', false, 1, 0, 'outer', 'outer'),
    side('y', false, 1, 0, 'outer', 'outer'),
  ],
};

/**
 * The length of a side along its outer face, from a whole and a cut of its axis in any one unit.
 *
 * Example: the side beside the corner that an L of 2000 leaves out by 800: `sideLength(SIDES.L[0], 2000, 800)` is
 * 1200.
 */
export const sideLength = ({ whole, cut }: Side, wholeLength: number, cutLength: number): number =>
  whole * wholeLength + cut * cutLength;

/**
 * The outside size in mm of what was asked for inside or outside. Both faces of an inner corner move alike, so the
 * corner left out measures the same either way, and so does a row.
 *
 * Example: 1120 by 520 inside, panels 40 thick: `outsideSize({ lengthMm: 1120, widthMm: 520 }, 'inside', 'rectangle',
 * 40)` is `{ lengthMm: 1200, widthMm: 600 }`.
 */
export const outsideSize = (size: PlanSize, faces: Faces, shape: KitShape, thicknessMm: number): PlanSize => {
  if (faces === 'outside' || shape === 'row') return size;
  return { ...size, lengthMm: size.lengthMm + 2 * thicknessMm, widthMm: size.widthMm + 2 * thicknessMm };
};

/**
 * The other way round: the size between the faces that were asked for, of an outside size.
 *
 * Example: `sizeBetween({ lengthMm: 1200, widthMm: 600 }, 'inside', 'rectangle', 40)` is `{ lengthMm: 1120, widthMm:
 * 520 }`.
 */
export const sizeBetween = (outside: PlanSize, faces: Faces, shape: KitShape, thicknessMm: number): PlanSize =>
  outsideSize(outside, faces, shape, -thicknessMm);
