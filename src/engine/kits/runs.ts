import { type Reach, reachOf, type Turns } from './corners.ts';
import { type Side, sideLength } from './outline.ts';

/** Lengths as whole numbers, so that sums are exact: 1/64 in and a tenth of a mm are both whole in nanometres. */
const NANO_PER_MM = 1e6;
/**
 * A length in nanometres, the nearest whole number of them: sums are exact then, of 1/64 in and of tenths of a mm
 * alike.
 *
 * Example: `nanoOf(25.4 / 64)` is 396875.
 */
export const nanoOf = (mm: number): number => Math.round(mm * NANO_PER_MM);
/**
 * A length in mm, of one in nanometres.
 *
 * Example: `mmOfNano(396875)` is 0.396875.
 */
export const mmOfNano = (nano: number): number => nano / NANO_PER_MM;

/** What the panels of one side have to add up to in each course. */
export interface RunNeed {
  /** In the courses in which it is longer, or in all of them. */
  longNano: number;
  /** By how much it is shorter in every other course: 0, or two thicknesses where both ends step back. */
  stepNano: number;
  /** In which courses it is longer: 0 the first, third ..., 1 the second, fourth ... */
  longIn: 0 | 1;
}

const addedBy = ({ start, end }: Reach): number => start + end;

/** How a run follows from the length of its side: both ends give and take, and with one course only the first counts. */
export interface RunKind {
  /** Added to the length of the side where the run is longer. */
  addedNano: number;
  stepNano: number;
  longIn: 0 | 1;
}

/**
 * How the run of a side follows from its length, for one way to turn the corners. `thickness` in nanometres.
 *
 * Example: a side that runs through at one end in each course reaches as far in all: `runKind(SIDES.rectangle, 0,
 * [true, true, true, true], 40, 2)` is `{ addedNano: -40, stepNano: 0, longIn: 0 }`.
 */
export const runKind = (
  sides: readonly Side[],
  index: number,
  turns: Turns,
  thickness: number,
  courses: number,
): RunKind => {
  const first = addedBy(reachOf(sides, index, turns, 0, thickness));
  const second = courses === 1 ? first : addedBy(reachOf(sides, index, turns, 1, thickness));
  return { addedNano: Math.max(first, second), stepNano: Math.abs(first - second), longIn: first >= second ? 0 : 1 };
};

/**
 * What every side needs, in the order of the sides. `whole` and `cut` are the size along each axis, `thickness` that
 * of the panels, all in nanometres.
 *
 * Example: a row has no corners to give or take at: `runsNeeded(SIDES.row, [], { x: { whole: 1800, cut: 0 } }, 40, 2)`
 * is `[{ longNano: 1800, stepNano: 0, longIn: 0 }]`.
 */
export const runsNeeded = (
  sides: readonly Side[],
  turns: Turns,
  size: Readonly<Record<'x' | 'y', { whole: number; cut: number }>>,
  thickness: number,
  courses: number,
): RunNeed[] =>
  sides.map((side, index) => {
    const { addedNano, stepNano, longIn } = runKind(sides, index, turns, thickness, courses);
    const { whole, cut } = size[side.axis];
    return { longNano: sideLength(side, whole, cut) + addedNano, stepNano, longIn };
  });
