import type { Corner, Side } from './outline.ts';

/*
 * How panels meet. At every corner one side runs through, over the square where both meet, and the other butts against its
 * inner face; in the next course it is the other way round, so that the corner interlocks. Panels have a sleeve upright in
 * each end, half a thickness in: the one of the panel that runs through stands in the middle of the corner's square in every
 * course, and one pin goes through them all. Along a side the courses are thereby shifted by one thickness against each
 * other: at a joint the pin goes through the panel on the one side of it in one course, on the other side in the next.
 */

/** Which courses: the first, third, fifth ... or the second, fourth ... */
export type Parity = 0 | 1;

/** At each corner, whether in the first course the side that starts there runs through (else the one that ends there). */
export type Turns = readonly boolean[];

/**
 * All ways to turn so many corners, first the one in which every side runs through where it starts: two to the power
 * of the corners.
 *
 * Example: `allTurns(4).length` is 16.
 */
export const allTurns = (corners: number): Turns[] =>
  Array.from({ length: 2 ** corners }, (_, index) =>
    Array.from({ length: corners }, (_each, corner) => (index & (1 << corner)) === 0),
  );

/** How far a run reaches beyond the outer corner it stands at: where it butts at an outer corner, it stops short. */
const reach = (corner: Corner, through: boolean, thickness: number): number => {
  if (corner === 'outer') return through ? 0 : -thickness;
  return corner === 'inner' && through ? thickness : 0;
};

/** How far the run of panels of a side goes beyond its corners, in one course. In the unit of the thickness. */
export interface Reach {
  /** Beyond the corner the side starts at, and beyond the one it ends at; below 0 it stops short. */
  start: number;
  end: number;
}

/**
 * How far the run of panels of one side reaches in one course. Any one unit. `turns` has one entry for every corner;
 * at an end of a row there is nothing to reach for.
 *
 * Example: a side that runs through at its start and not at its end stops one thickness short there:
 * `reachOf(SIDES.rectangle, 0, [true, true, true, true], 0, 40)` is `{ start: 0, end: -40 }`.
 */
export const reachOf = (
  sides: readonly Side[],
  index: number,
  turns: Turns,
  parity: Parity,
  thickness: number,
): Reach => {
  const side = sides[index]!;
  const startsThrough = turns[index] !== (parity === 1);
  const endsThrough = turns[(index + 1) % sides.length] === (parity === 1);
  return { start: reach(side.start, startsThrough, thickness), end: reach(side.end, endsThrough, thickness) };
};
