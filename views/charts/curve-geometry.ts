import { rounded } from './rounded.ts';

/** Sizes of the drawing, in units of the drawing (pixels on a screen). */
export interface CurveSizes {
  width: number;
  /** From all of it down to nothing. */
  height: number;
  /** Left for the shares, above, and below for the days. */
  left: number;
  top: number;
  bottom: number;
}

/** A share from 0 to 1 after so many hours; null where nobody says. */
export interface CurvePoint {
  hours: number;
  share: number | null;
}

export interface CurveGeometry {
  width: number;
  height: number;
  /** The line of nothing. */
  noneY: number;
  /** The curve as the `d` of a path; it begins anew after what nobody says. */
  line: string;
  /** Where a time, and a share, stand. */
  xOf: (hours: number) => number;
  yOf: (share: number) => number;
}

/**
 * A curve of shares over time, in order of time, from the start to the last hours.
 *
 * Example: nothing said at 0 hours, 0.5 at 10 and 1 at 20, in 100 by 40: from (50, 20) to (100, 0).
 */
export const curveGeometry = (
  points: readonly CurvePoint[],
  lastHours: number,
  { width, height, left, top, bottom }: CurveSizes,
): CurveGeometry => {
  const xOf = (hours: number) => rounded(left + (hours / Math.max(1, lastHours)) * (width - left));
  const yOf = (share: number) => rounded(top + (1 - Math.max(0, Math.min(1, share))) * height);
  const line = points
    .map(({ hours, share }, at) =>
      share === null ? '' : `${(points[at - 1]?.share ?? null) === null ? 'M' : 'L'}${xOf(hours)} ${yOf(share)}`,
    )
    .join('');
  return { width, height: top + height + bottom, noneY: yOf(0), line, xOf, yOf };
};

/** A text that belongs to a point. */
export interface CurveLabel {
  x: number;
  y: number;
  width: number;
}

const LINE_HEIGHT = 16;

/**
 * Texts at points of a rising curve, in order of time, none over another: where two would touch the later one moves up.
 *
 * Example: at (0, 50) and (10, 45), 60 wide each: at 50 and 34.
 */
export const labelRows = (labels: readonly CurveLabel[]): number[] => {
  const placed: (CurveLabel & { row: number })[] = [];
  for (const label of labels) {
    const near = placed.filter(({ x, width }) => label.x < x + width && x < label.x + label.width);
    const row = Math.min(label.y, ...near.map((one) => one.row - LINE_HEIGHT));
    placed.push({ ...label, row });
  }
  return placed.map(({ row }) => row);
};
