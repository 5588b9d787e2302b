import type { MeshKind } from './block.ts';
import { EFFORTS } from './effort.ts';
import type { Openings } from './openings.ts';

/** Sizes that pieces side by side can come to, 0 first, the whole sheet last; only there is a cut of any use. */
const sizesTo = (edge: number, sizes: readonly number[]): number[] => {
  const reached = new Uint8Array(edge + 1);
  reached[0] = 1;
  for (let at = 1; at <= edge; at++) if (sizes.some((size) => size <= at && reached[at - size] === 1)) reached[at] = 1;
  reached[edge] = 1;
  return Array.from({ length: edge + 1 }, (_, at) => at).filter((at) => reached[at] === 1);
};

/** For each length up to the edge the place of the largest size that is no longer. */
const placesOf = (edge: number, sizes: readonly number[]): Int32Array => {
  const places = new Int32Array(edge + 1);
  let place = 0;
  for (let at = 0; at <= edge; at++) {
    if (sizes[place + 1] === at) place++;
    places[at] = place;
  }
  return places;
};

interface Table {
  across: number[];
  along: number[];
  acrossAt: Int32Array;
  alongAt: Int32Array;
  /** The most that pieces without number are worth in a part of that size, row by row. */
  worth: Float64Array;
}

/** Sizes on a coarser grid, rounded down: what goes on a sheet goes on it there as well. */
const coarser = (size: Openings, by: number): Openings => ({
  across: Math.floor(size.across / by),
  along: Math.floor(size.along / by),
});

/** The finest grid on which the table is worth its effort, and no piece is as nothing. */
const gridFor = (kinds: readonly MeshKind[], { across, along }: Openings, mostSums: number): number => {
  const least = Math.min(...kinds.flatMap((kind) => kind.ways.flatMap(({ size }) => [size.across, size.along])));
  let by = 1;
  while (by < least && (across / by) * (along / by) * ((across + along) / by) > mostSums) by++;
  return by;
};

const tableOf = (kinds: readonly MeshKind[], worth: ArrayLike<number>, sheet: Openings, by: number): Table => {
  const used = kinds.flatMap((kind, i) =>
    kind.wanted > 0 && worth[i]! > 0
      ? kind.ways.map(({ size }) => ({ size: coarser(size, by), worth: worth[i]! }))
      : [],
  );
  const across = sizesTo(sheet.across, [...new Set(used.map((x) => x.size.across))]);
  const along = sizesTo(sheet.along, [...new Set(used.map((x) => x.size.along))]);
  const [columns, rows] = [across.length, along.length];
  const table = new Float64Array(columns * rows);
  const acrossAt = placesOf(sheet.across, across);
  const alongAt = placesOf(sheet.along, along);
  for (let y = 0; y < rows; y++)
    for (let x = 0; x < columns; x++) {
      let most = 0;
      for (const one of used)
        if (one.worth > most && one.size.across <= across[x]! && one.size.along <= along[y]!) most = one.worth;
      for (let at = 1; 2 * across[at]! <= across[x]!; at++)
        most = Math.max(most, table[y * columns + at]! + table[y * columns + acrossAt[across[x]! - across[at]!]!]!);
      for (let at = 1; 2 * along[at]! <= along[y]!; at++)
        most = Math.max(most, table[at * columns + x]! + table[alongAt[along[y]! - along[at]!]! * columns + x]!);
      table[y * columns + x] = most;
    }
  return { across, along, acrossAt, alongAt, worth: table };
};

/**
 * What is left of a sheet round a block in its corner is worth no more than this, whatever is cut from it. The block grows
 * step by step to the whole sheet, each time by a part beside or below it that is filled with as many pieces of any kind as
 * go in: the dearest way to grow. Source: Gilmore and Gomory's recursion (1966) and the bound of Viswanathan and
 * Bagchi (1993), from memory. A large sheet is looked at on a coarser grid, which bounds a little less well.
 *
 * Example: pieces of 2 by 2 worth 4; a block of 2 by 2 on a sheet of 4 by 4 leaves room for 12 more.
 */
export const worthBeside = (
  kinds: readonly MeshKind[],
  worth: ArrayLike<number>,
  sheet: Openings,
  mostSums = EFFORTS.usual.sums,
): ((block: Openings) => number) => {
  const by = gridFor(kinds, sheet, mostSums);
  const { across, along, acrossAt, alongAt, worth: filled } = tableOf(kinds, worth, coarser(sheet, by), by);
  const [columns, rows] = [across.length, along.length];
  const left = new Float64Array(columns * rows);
  for (let y = rows - 1; y >= 0; y--)
    for (let x = columns - 1; x >= 0; x--) {
      let most = 0;
      for (let to = x + 1; to < columns; to++)
        most = Math.max(most, filled[y * columns + acrossAt[across[to]! - across[x]!]!]! + left[y * columns + to]!);
      for (let to = y + 1; to < rows; to++)
        most = Math.max(most, filled[alongAt[along[to]! - along[y]!]! * columns + x]! + left[to * columns + x]!);
      left[y * columns + x] = most;
    }
  return (block) => {
    const { across: x, along: y } = coarser(block, by);
    return left[alongAt[y]! * columns + acrossAt[x]!]!;
  };
};
