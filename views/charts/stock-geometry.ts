import { rounded } from './rounded.ts';

/** Sizes of the drawing, in units of the drawing (pixels on a screen). */
export interface StockSizes {
  width: number;
  /** From the most there ever is down to none. */
  height: number;
  /** Left for the amounts, and above, below for the days. */
  left: number;
  top: number;
  bottom: number;
}

/** How much there is after something happened on a day, counted from any day. */
export interface StockLevel {
  day: number;
  left: number;
}

export interface StockGeometry {
  width: number;
  height: number;
  /** The stepped line as the `d` of a path. */
  line: string;
  /** Where each of the levels begins, in the order given. */
  points: { x: number; y: number }[];
  /** The line of none, and of the most there is. */
  noneY: number;
  mostY: number;
  most: number;
}

interface Point {
  x: number;
  y: number;
}

/** Whether the middle one of three corners lies on a straight way from the first to the last. */
const isOnTheWay = (first: Point, middle: Point, last: Point): boolean =>
  (first.x === middle.x && middle.x === last.x && middle.y > first.y === last.y > middle.y) ||
  (first.y === middle.y && middle.y === last.y);

/** A line from a point through others: level to the next, then up or down to it. Hundreds of steps down in one day are one stroke. */
const steppedLine = ([from, ...points]: readonly [Point, ...Point[]]): string => {
  const corners: Point[] = [from];
  const add = (next: Point): void => {
    const last = corners.at(-1)!;
    if (next.x === last.x && next.y === last.y) return;
    if (corners.length > 1 && isOnTheWay(corners.at(-2)!, last, next)) corners.pop();
    corners.push(next);
  };
  for (const point of points) {
    add({ x: point.x, y: corners.at(-1)!.y });
    add(point);
  }
  const strokes = corners.slice(1).map(({ x, y }, place) => (x === corners[place]!.x ? `V${y}` : `H${x}`));
  return `M${from.x} ${from.y}${strokes.join('')}`;
};

/**
 * A stepped line of how much there is, from the first day to the last: it stays as it is until the next level. Levels are in
 * order of time; several on one day fall straight down or rise. At least a day wide and one high.
 *
 * Example: 3 on day 0 and 1 on day 5 of 10, in 100 by 60: from (0, 0) to (50, 0), down to (50, 40), and on to (100, 40).
 */
export const stockGeometry = (
  start: number,
  levels: readonly StockLevel[],
  { first, last }: { first: number; last: number },
  { width, height, left, top, bottom }: StockSizes,
): StockGeometry => {
  const most = Math.max(1e-9, start, ...levels.map((one) => one.left));
  const days = Math.max(1, last - first);
  const xOf = (day: number) => rounded(left + ((Math.max(first, Math.min(last, day)) - first) / days) * (width - left));
  const yOf = (amount: number) => rounded(top + (1 - Math.max(0, amount) / most) * height);
  const points = levels.map((one) => ({ x: xOf(one.day), y: yOf(one.left) }));
  return {
    ...{ width, height: top + height + bottom, points, most, noneY: yOf(0), mostY: yOf(most) },
    line: steppedLine([
      { x: rounded(left), y: yOf(start) },
      ...points,
      { x: rounded(width), y: points.at(-1)?.y ?? yOf(start) },
    ]),
  };
};
