import { areaOf, fits } from './block.ts';
import { EFFORTS, type Effort } from './effort.ts';
import { type Kept, restSearch, type Usable } from './largest-rest.ts';
import type { Openings } from './openings.ts';
import { partOf } from './part.ts';
import type { SmallestBlocks } from './smallest-blocks.ts';

/** A sheet or a rest on hand with what is cut from it. */
export interface SheetUsed extends Kept {
  /** Which of the rests on hand; a whole sheet has none. */
  rest?: number;
}

/** What sheets are cut; sizes in openings. */
export interface Stock {
  sheet: Openings;
  /** Rests on hand, one by one. */
  rests: readonly Openings[];
  usable: Usable;
}

/** The best cutting, and whether nothing could be better: fewer sheets, or as many with less thrown away. */
export interface ExactCutting {
  used: SheetUsed[];
  sheets: number;
  isProven: boolean;
}

/** More than any area: a sheet counts before everything else. */
const SHEET = 1e12;

/** Takes no more sheets, and of rests no more area, to hold each selection; `from` is what the last sheet or rest holds. */
interface Cover {
  cost: Float64Array;
  stages: { stock: number; from: Int32Array }[];
}

const NONE = -1;

const holdsOf = ({ selections, blocks }: SmallestBlocks, stock: readonly Openings[]): boolean[][] =>
  stock.map((sheet) => Array.from({ length: selections.count }, (_, i) => blocks[i]!.some((x) => fits(x, sheet))));

/** Each rest once, then as many sheets as it takes. `without` is a rest that is left out. */
const coverOf = (small: SmallestBlocks, stock: readonly Openings[], holds: boolean[][], without: number): Cover => {
  const { count, partsOf } = small.selections;
  let cost = new Float64Array(count).fill(Number.POSITIVE_INFINITY);
  cost[0] = 0;
  const stages: Cover['stages'] = [];
  for (let rest = 1; rest < stock.length; rest++) {
    if (rest === without) continue;
    const next = cost.slice();
    const from = new Int32Array(count).fill(NONE);
    for (let all = 1; all < count; all++)
      for (const part of partsOf(all)) {
        const sum = cost[all - part]! + areaOf(stock[rest]!);
        if (!holds[rest]![part] || sum >= next[all]!) continue;
        next[all] = sum;
        from[all] = part;
      }
    stages.push({ stock: rest, from });
    cost = next;
  }
  const from = new Int32Array(count).fill(NONE);
  for (let all = 1; all < count; all++)
    for (const part of partsOf(all)) {
      const sum = cost[all - part]! + SHEET;
      if (!holds[0]![part] || sum >= cost[all]!) continue;
      cost[all] = sum;
      from[all] = part;
    }
  stages.push({ stock: 0, from });
  return { cost, stages };
};

/** Which selection each sheet or rest holds. */
const unfold = ({ stages }: Cover, selection: number): { stock: number; part: number }[] => {
  const used: { stock: number; part: number }[] = [];
  let left = selection;
  for (let i = stages.length - 1; i >= 0; i--) {
    const { stock, from } = stages[i]!;
    while (from[left] !== NONE && left > 0) {
      used.push({ stock, part: from[left]! });
      left -= from[left]!;
      if (stock > 0) break;
    }
  }
  return used.reverse();
};

/** A choice of the sheet or rest from which the largest rest is kept. */
interface Choice {
  stock: number;
  part: number;
  /** All that is opened: sheets first, then openings of area. */
  opened: number;
  cover: Cover;
}

const choicesOf = (small: SmallestBlocks, stock: readonly Openings[]): Choice[] => {
  const holds = holdsOf(small, stock);
  const all = small.selections.count - 1;
  const choices: Choice[] = [];
  stock.forEach((sheet, i) => {
    if (stock.slice(1, i).some((x) => x.across === sheet.across && x.along === sheet.along)) return;
    const cover = coverOf(small, stock, holds, i);
    for (const part of small.selections.partsOf(all)) {
      if (!holds[i]![part] || cover.cost[all - part] === Number.POSITIVE_INFINITY) continue;
      choices.push({ stock: i, part, opened: cover.cost[all - part]! + (i === 0 ? SHEET : areaOf(sheet)), cover });
    }
  });
  return choices;
};

/**
 * All the pieces from as few whole sheets as there can be; of those ways, the one that throws least away: what is opened
 * of rests on hand, less the largest usable rest that is left in one piece. A rest that is not opened stays as it is.
 * Exact: all selections for each sheet and rest are looked at, and all ways to keep a rest as long as the counted effort
 * lasts.
 *
 * Example: three pieces of 2 by 3, not turned, and sheets of 4 by 3 take 2 sheets; from one of them 2 by 3 is kept.
 */
export const fewestExact = (
  small: SmallestBlocks,
  { sheet, rests, usable }: Stock,
  effort: Pick<Effort, 'restSteps'> = EFFORTS.usual,
): ExactCutting => {
  const stock = [sheet, ...rests];
  const search = restSearch(small, usable, effort);
  // The least that could be thrown away comes first, so that the others need not be looked at once it is not reached.
  const choices = choicesOf(small, stock)
    .map((x) => ({ ...x, least: x.opened - search.atMost(x.part, stock[x.stock]!) }))
    .sort((a, b) => a.least - b.least);
  const fewest = choices.reduce((min, x) => Math.min(min, x.opened), Number.POSITIVE_INFINITY);
  const sheets = Math.floor(fewest / SHEET);
  let best: { choice: Choice; kept: Kept; cost: number } | null = null;
  for (const choice of choices) {
    if (Math.floor(choice.opened / SHEET) > sheets) continue;
    if (best && choice.least >= best.cost) break;
    const kept = search.largest(choice.part, stock[choice.stock]!)!;
    if (!best || choice.opened - kept.area < best.cost) best = { choice, kept, cost: choice.opened - kept.area };
  }
  if (!best) throw new Error('a piece fits no sheet');
  const { choice, kept } = best;
  const others = unfold(choice.cover, small.selections.count - 1 - choice.part).map((x) => {
    const block = small.blocks[x.part]!.find((b) => fits(b, stock[x.stock]!))!;
    return { stock: x.stock, area: 0, part: partOf(block, stock[x.stock]!) };
  });
  const used = [...others, { stock: choice.stock, ...kept }].map(({ stock: i, area, part }) =>
    i === 0 ? { area, part } : { rest: i - 1, area, part },
  );
  return { used, sheets, isProven: search.isProven() };
};
