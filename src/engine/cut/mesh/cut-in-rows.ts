import { areaOf, fits } from './block.ts';
import type { Openings } from './openings.ts';

/** A way that a piece may lie: as it is, or turned. */
export interface Way extends Openings {
  isTurned: boolean;
}

/** What is left beside or below pieces, so many openings from the left and the upper edge. */
export interface Spot extends Openings {
  x: number;
  y: number;
}

/** Pieces of one size in a row, from a sheet's upper left corner on, and what is left of it that is of use. */
export interface Row {
  count: number;
  way: Way;
  /** Side by side across the width, or one after the other along the length. */
  cut: 'across' | 'along';
  rests: Spot[];
}

/** What a rest of that size is worth, openings; 0 where nothing could be cut from it. */
export type WorthOf = (rest: Openings) => number;

const countOn = ({ across, along }: Openings, way: Openings): number =>
  Math.floor(across / way.across) * Math.floor(along / way.along);

/** As many of a piece as are cut from a rest by hand, in openings: all one way, and turned from the strips beside and below. */
const filledBy = ({ across, along }: Openings, ways: readonly Way[]): number => {
  let most = 0;
  for (const way of ways) {
    const [beside, below] = [across % way.across, along % way.along];
    for (const turned of ways)
      most = Math.max(
        most,
        countOn({ across, along }, way) +
          countOn({ across: beside, along }, turned) +
          countOn({ across: across - beside, along: below }, turned),
      );
  }
  return most * areaOf(ways[0]!);
};

/**
 * What a rest is worth to pieces, each with its ways to lie: how much of it each fills by itself, on average; nothing where none
 * goes on it. So a rest that only small pieces go on is worth less than one as large that all do.
 *
 * Example: to pieces of 4 by 18 and of 2 by 2, 5 by 17 is worth 32: nothing to the one, 64 of its 85 openings to the other.
 */
export const worthTo = (pieces: readonly (readonly Way[])[]): WorthOf => {
  const all = Math.max(1, pieces.length);
  return (rest) => pieces.reduce((sum, ways) => sum + filledBy(rest, ways), 0) / all;
};

/** What is left of a sheet round a block in its corner, once a cut from edge to edge is made beside it, or below it. */
const restsBeside = ({ across, along }: Openings, block: Openings, first: 'across' | 'along'): Spot[] => {
  const [beside, below] = [across - block.across, along - block.along];
  return first === 'across'
    ? [
        { x: block.across, y: 0, across: beside, along },
        { x: 0, y: block.along, across: block.across, along: below },
      ]
    : [
        { x: block.across, y: 0, across: beside, along: block.along },
        { x: 0, y: block.along, across, along: below },
      ];
};

/**
 * The less is lost for a piece, the better; then the more pieces, the shorter the first cut (nobody slits a roll from end to end
 * who need not), the larger the largest rest.
 */
interface Judged {
  row: Row;
  lost: number;
  cut: number;
  largest: number;
}

const judged = (space: Openings, first: 'across' | 'along', row: Row, worthOf: WorthOf): Judged => {
  const worth = row.rests.reduce((sum, rest) => sum + worthOf(rest), 0);
  const lost = areaOf(space) - row.count * areaOf(row.way) - worth;
  const cut = first === 'across' ? space.along : space.across;
  return {
    row,
    lost: lost / row.count,
    cut,
    largest: row.rests.reduce((most, rest) => Math.max(most, areaOf(rest)), 0),
  };
};

const isBetter = (a: Judged, b: Judged): boolean =>
  (a.lost - b.lost || b.row.count - a.row.count || a.cut - b.cut || b.largest - a.largest) < 0;

/**
 * The row of at most so many pieces that loses least of a sheet, or of a rest, for each of them. Null where the piece does not go on
 * it. Sizes in openings.
 *
 * Example: a piece of 4 by 18, six wanted, and a sheet of 24 by 48: six side by side, and 24 by 30 is left.
 */
export const bestRow = (space: Openings, ways: readonly Way[], wanted: number, worthOf: WorthOf): Row | null => {
  let best: Judged | null = null;
  for (const way of ways) {
    if (!fits(way, space)) continue;
    for (const cut of ['across', 'along'] as const) {
      const count = Math.min(wanted, Math.floor(space[cut] / way[cut]));
      const block = { ...way, [cut]: count * way[cut] };
      for (const first of ['along', 'across'] as const) {
        const rests = restsBeside(space, block, first).filter((rest) => worthOf(rest) > 0);
        const one = judged(space, first, { count, way, cut, rests }, worthOf);
        if (!best || isBetter(one, best)) best = one;
      }
    }
  }
  return best?.row ?? null;
};

/** What cutting goes by: which rests are there by now, a new sheet, and what becomes of one that a row is cut from. */
interface Cutting<R extends Openings> {
  worthOf: WorthOf;
  isThere(rest: R): boolean;
  open(): R;
  cut(from: R, row: Row): R[];
}

const smallestFor = <R extends Openings>(
  rests: readonly R[],
  ways: readonly Way[],
  isThere: (rest: R) => boolean,
): R | null => {
  let best: R | null = null;
  for (const rest of rests) {
    if (!ways.some((way) => fits(way, rest)) || !isThere(rest)) continue;
    const more = best ? areaOf(rest) - areaOf(best) || rest.across - best.across : -1;
    if (more < 0) best = rest;
  }
  return best;
};

/**
 * Cuts pieces of one size in rows: each row from the smallest rest that a piece goes on, from a new sheet where there is none. This
 * is what somebody does who takes what is next to hand; the rests that are left then come back. Every piece goes on a sheet.
 */
export const cutInRows = <R extends Openings>(
  rests: readonly R[],
  ways: readonly Way[],
  wanted: number,
  cutting: Cutting<R>,
): readonly R[] => {
  let open = rests;
  for (let left = wanted; left > 0; ) {
    const from = smallestFor(open, ways, cutting.isThere) ?? cutting.open();
    const row = bestRow(from, ways, left, cutting.worthOf);
    if (!row) throw new Error('a piece fits no sheet');
    open = [...open.filter((one) => one !== from), ...cutting.cut(from, row)];
    left -= row.count;
  }
  return open;
};
