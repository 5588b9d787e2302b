import type { Faces, KitShape } from '../../../shared/kit-size.ts';

/** A plan in mm. x runs to the right, y down the page. `cut…` is the corner an L leaves out, at the top right. */
export interface PlanSize {
  lengthMm: number;
  /** 0 for a row. */
  widthMm: number;
  cutLengthMm: number;
  cutWidthMm: number;
}

export type Axis = 'x' | 'y';

/** Two sides meet there: they turn towards the inside, or away from it at the inner corner of an L. A row just ends. */
export type Corner = 'outer' | 'inner' | 'end';

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

/** The length of a side along its outer face, from a whole and a cut of its axis in any one unit. */
export const sideLength = ({ whole, cut }: Side, wholeLength: number, cutLength: number): number =>
  whole * wholeLength + cut * cutLength;

/**
 * The outside size of what was asked for inside or outside. Both faces of an inner corner move alike, so the corner left
 * out measures the same either way, and so does a row.
 *
 * Example: 1120 by 520 inside, panels 40 thick, is 1200 by 600 outside.
 */
export const outsideSize = (size: PlanSize, faces: Faces, shape: KitShape, thicknessMm: number): PlanSize => {
  if (faces === 'outside' || shape === 'row') return size;
  return { ...size, lengthMm: size.lengthMm + 2 * thicknessMm, widthMm: size.widthMm + 2 * thicknessMm };
};

/** The other way round. Example: 1200 by 600 outside, panels 40 thick, is 1120 by 520 inside. */
export const sizeBetween = (outside: PlanSize, faces: Faces, shape: KitShape, thicknessMm: number): PlanSize =>
  outsideSize(outside, faces, shape, -thicknessMm);
