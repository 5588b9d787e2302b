import { rounded } from './rounded.ts';

/** Sizes of the drawing, in units of the drawing (pixels on a screen). */
export interface WeeksSizes {
  width: number;
  /** A line of words above the columns, one for each flag. */
  flagLine: number;
  /** How tall a column is whose session is taken to the last minute. */
  column: number;
  /** Below the columns: the days at which weeks begin, and then a line for each mark that has no room beside another. */
  days: number;
  mark: number;
  /** No column is wider than this. */
  widest: number;
}

/** A session, or several together: shares from 0 to 1. Days are counted from any day. */
export interface WeeksColumn {
  day: number;
  moulds: number;
  hands: number;
}

interface Box {
  x: number;
  y: number;
  width: number;
  height: number;
}

export interface WeeksGeometry {
  width: number;
  height: number;
  /** In the order given: all there is, and the two parts that are taken, side by side. */
  columns: { all: Box; moulds: Box; hands: Box }[];
  /** The line on which columns stand. */
  groundY: number;
  /** In the order given: where a day stands, and the line of its words. */
  flags: { x: number; y: number }[];
  /** In the order given: the middle of each mark. */
  marks: { x: number; y: number }[];
  /** The first column of each week that has room for its day. */
  weeks: { column: number; x: number }[];
}

const WEEK_DAYS = 7;
/** Day 0 of `dayNumber` is a Thursday: weeks begin on Mondays. */
const weekOf = (day: number): number => Math.floor((day + 3) / WEEK_DAYS);
/** Between two columns, of their width. */
const GAP = 0.2;

/** Marks in the lines below each other: one that would touch another takes the next line. */
const marksIn = (xs: readonly number[], top: number, mark: number) => {
  const lines: number[][] = [];
  return xs.map((x) => {
    const free = lines.findIndex((line) => line.every((other) => Math.abs(other - x) >= mark));
    const line = free < 0 ? lines.push([]) - 1 : free;
    lines[line]!.push(x);
    return { x, y: rounded(top + (line + 0.5) * mark) };
  });
};

/**
 * Where everything of the strip goes: columns from left to right in order of time, each filled from below by the shares that
 * are taken. A flag or a mark stands in the middle of the column of its day, or, where that day has none, behind the last
 * column before it. Days on which nobody works have no width.
 *
 * Example: two columns in 100 without a limit are 50 wide each with their gap, 40 without; a flag on the day of the second
 * stands at 75, one on a later day at 100.
 */
export const weeksGeometry = (
  columns: readonly WeeksColumn[],
  { flags, marks }: { flags: readonly number[]; marks: readonly number[] },
  sizes: WeeksSizes,
): WeeksGeometry => {
  const step = Math.min(sizes.widest, sizes.width / Math.max(1, columns.length));
  const top = flags.length * sizes.flagLine;
  const groundY = top + sizes.column;
  const [wide, inset] = [step * (1 - GAP), (step * GAP) / 2];
  const xOf = (day: number): number => {
    const at = columns.findLastIndex((one) => one.day <= day);
    const isItsOwn = columns[at]?.day === day;
    return rounded((at + (isItsOwn ? 0.5 : 1)) * step);
  };
  const filled = (x: number, width: number, share: number): Box => {
    const height = rounded(Math.min(1, Math.max(0, share)) * sizes.column);
    return { x: rounded(x), y: rounded(groundY - height), width: rounded(width), height };
  };
  const placed = marksIn(marks.map(xOf), groundY + sizes.days, sizes.mark);
  let free = 0;
  return {
    width: sizes.width,
    height: Math.max(groundY + sizes.days, ...placed.map(({ y }) => y + sizes.mark / 2)),
    groundY,
    columns: columns.map(({ moulds, hands }, place) => {
      const x = place * step + inset;
      return {
        all: filled(x, wide, 1),
        moulds: filled(x, wide / 2, moulds),
        hands: filled(x + wide / 2, wide / 2, hands),
      };
    }),
    flags: flags.map((day, line) => ({ x: xOf(day), y: (line + 1) * sizes.flagLine })),
    marks: placed,
    weeks: columns.flatMap(({ day }, column) => {
      const isFirst = column === 0 || weekOf(columns[column - 1]!.day) < weekOf(day);
      const x = rounded(column * step + inset);
      if (!isFirst || x < free) return [];
      free = x + WEEK_NAME;
      return [{ column, x }];
    }),
  };
};

/** Of "12 Apr". */
const WEEK_NAME = 52;
