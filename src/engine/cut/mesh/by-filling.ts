import { areaOf, type Block, type MeshKind } from './block.ts';
import { EFFORTS, type MeshEffort } from './effort.ts';
import type { ExactCutting, SheetUsed, Stock } from './fewest-exact.ts';
import { fewestSheets } from './fewest-sheets.ts';
import { fillSheet } from './fill-sheet.ts';
import { restSearch } from './largest-rest.ts';
import { partOf } from './part.ts';
import { smallestBlocks } from './smallest-blocks.ts';

const countsOf = (block: Block, counts: number[]): number[] => {
  if ('kind' in block) counts[block.kind] = counts[block.kind]! + 1;
  else for (const part of [block.first, block.second]) countsOf(part, counts);
  return counts;
};

/** A block cut out so that the rest kept is the largest, where its pieces are few enough for that. */
const keptOf = (
  kinds: readonly MeshKind[],
  block: Block,
  { sheet, usable }: Pick<Stock, 'sheet' | 'usable'>,
  effort: MeshEffort,
): SheetUsed => {
  const counts = countsOf(
    block,
    kinds.map(() => 0),
  );
  const places = counts.flatMap((n, kind) => (n > 0 ? [kind] : []));
  const some = places.map((kind) => ({ ...kinds[kind]!, wanted: counts[kind]! }));
  const small = smallestBlocks(some, [sheet], EFFORTS[effort]);
  const kept = small && restSearch(small, usable, EFFORTS[effort]).largest(small.selections.count - 1, sheet);
  return kept ? { area: kept.area, part: renamed(kept.part, places) } : { area: 0, part: partOf(block, sheet) };
};

const renamed = (part: SheetUsed['part'], places: readonly number[]): SheetUsed['part'] => {
  if (part.is === 'piece') return { ...part, kind: places[part.kind]! };
  if (part.is === 'rest') return part;
  return { ...part, first: renamed(part.first, places), second: renamed(part.second, places) };
};

/**
 * Where not all can be looked through: rests on hand are filled first, the smallest first, then as few sheets as are
 * found. `atLeast` is a number of sheets that nobody can do without. Sizes in openings; every kind fits a sheet.
 *
 * Example: five pieces of 2 by 3, not turned, a rest of 2 by 3 and sheets of 4 by 3: the rest and two sheets.
 */
export const byFilling = (
  kinds: readonly MeshKind[],
  stock: Stock,
  effort: MeshEffort,
): ExactCutting & { atLeast: number } => {
  const used: SheetUsed[] = [];
  let left = kinds.map((x) => ({ ...x }));
  const inOrder = stock.rests.map((rest, i) => ({ rest, i })).sort((a, b) => areaOf(a.rest) - areaOf(b.rest));
  const worth = kinds.map(({ ways }) => areaOf(ways[0]!.size));
  const restsArea = stock.rests.reduce((sum, rest) => sum + areaOf(rest), 0);
  for (const { rest, i } of inOrder) {
    const { block, counts } = fillSheet(left, worth, rest, EFFORTS[effort].roundSteps, EFFORTS[effort].sums);
    if (!block) continue;
    used.push({ rest: i, ...keptOf(kinds, block, { ...stock, sheet: rest }, effort) });
    left = left.map((kind, k) => ({ ...kind, wanted: kind.wanted - counts[k]! }));
  }
  const places = left.flatMap((kind, i) => (kind.wanted > 0 ? [i] : []));
  const open = places.map((i) => left[i]!);
  const { blocks, atLeast } = places.length > 0 ? fewestSheets(open, stock.sheet, effort) : { blocks: [], atLeast: 0 };
  for (const block of blocks) {
    const { area, part } = keptOf(open, block, stock, effort);
    used.push({ area, part: renamed(part, places) });
  }
  const all = kinds.reduce((sum, kind, i) => sum + kind.wanted * worth[i]!, 0);
  const byArea = Math.max(0, Math.ceil((all - restsArea) / areaOf(stock.sheet) - 1e-9));
  return {
    used,
    sheets: blocks.length,
    isProven: false,
    atLeast: used.some((x) => x.rest !== undefined) ? byArea : atLeast,
  };
};
