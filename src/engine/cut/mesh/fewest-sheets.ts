import type { Fill } from '../fill.ts';
import { relaxedCutting } from '../relaxed.ts';
import { type Packing, packFilling } from '../rounds.ts';
import { areaOf, type Block, type MeshKind } from './block.ts';
import { EFFORTS, type MeshEffort } from './effort.ts';
import { fillSheet } from './fill-sheet.ts';
import type { Openings } from './openings.ts';

/** What each sheet holds, and a number of sheets that nobody can do with less than. */
export interface FewestSheets {
  blocks: Block[];
  atLeast: number;
}

/** Fills sheets, and remembers how the pieces of a filling are cut. */
const filling = (kinds: readonly MeshKind[], sheet: Openings, found: Map<string, Block>, sums: number) => {
  return (mostSteps: number): Fill =>
    (worth, wanted) => {
      const left = kinds.map((kind, i) => ({ ...kind, wanted: wanted[i]! }));
      const { block, ...filled } = fillSheet(left, worth, sheet, mostSteps, sums);
      if (block) found.set(filled.counts.join(), block);
      return filled;
    };
};

/** How many of a kind go on a sheet by themselves. */
const aloneOf = (kinds: readonly MeshKind[], fill: Fill): number[] =>
  kinds.map((kind, i) => {
    const only = kinds.map((_, k) => (k === i ? 1 : 0));
    return fill(
      only,
      only.map((n) => n * kind.wanted),
    ).counts[i]!;
  });

/** Whole parts of the relaxed cutting, and what is left over packed in rounds. */
const rounded = (
  kinds: readonly MeshKind[],
  patterns: { counts: number[]; times: number }[],
  pack: (wanted: number[], spent: number) => Packing,
): Packing => {
  const whole = patterns
    .map((x) => ({ counts: x.counts, times: Math.floor(x.times + 1e-6) }))
    .filter((x) => x.times > 0);
  const left = kinds.map(({ wanted }, i) => wanted - whole.reduce((sum, x) => sum + x.times * x.counts[i]!, 0));
  const sheets = whole.reduce((sum, x) => sum + x.times, 0);
  const rest = pack(left, sheets);
  return { patterns: [...whole, ...rest.patterns], sticks: sheets + rest.sticks, steps: rest.steps };
};

/**
 * So many pieces of each kind from as few sheets as it can find, with a number that nobody can go below: what the relaxed
 * cutting proves, where a sheet may count in fractions. That cutting rounded down and the rest packed in rounds; where it is
 * more than is proven, packed in rounds as a whole. Every kind is wanted and fits. Counted effort.
 *
 * Example: five pieces of 2 by 3 that may not be turned, and sheets of 4 by 3: 3 sheets, and at least 3.
 */
export const fewestSheets = (
  kinds: readonly MeshKind[],
  sheet: Openings,
  effort: MeshEffort = 'usual',
): FewestSheets => {
  const { boundSteps, roundSteps, mostSteps, rounds, sums } = EFFORTS[effort];
  const found = new Map<string, Block>();
  const fillWith = filling(kinds, sheet, found, sums);
  const wanted = kinds.map((x) => x.wanted);
  const room = kinds.map(({ ways }) => areaOf(ways[0]!.size));
  const relaxed = relaxedCutting(wanted, aloneOf(kinds, fillWith(roundSteps)), fillWith(boundSteps));
  const capacity = areaOf(sheet);
  const least = Math.ceil(room.reduce((sum, x, i) => sum + x * wanted[i]!, 0) / capacity - 1e-9);
  const atLeast = Math.max(relaxed.bound, least);
  const pack = (left: number[], spent: number): Packing =>
    packFilling({ room, wanted: left }, capacity, fillWith(roundSteps), {
      aim: atLeast - spent,
      rounds,
      mostSteps,
    });
  let best = rounded(kinds, relaxed.patterns, pack);
  if (best.sticks > atLeast) {
    const whole = pack(wanted, 0);
    if (whole.sticks < best.sticks) best = whole;
  }
  const blocks = best.patterns.flatMap((x) => {
    const block = found.get(x.counts.join())!;
    return Array.from({ length: x.times }, () => block);
  });
  return { blocks, atLeast };
};
