import { type Block, fits, joined, type MeshKind, pieceBlocks } from './block.ts';
import { EFFORTS, type Effort } from './effort.ts';
import type { Openings } from './openings.ts';

/**
 * Every way to take some of the pieces wanted, as a number: how many of the first kind, plus those of the second by
 * `step[1]`, and so on. What is part of something has a smaller number than it.
 */
interface Selections {
  count: number;
  step: readonly number[];
  /** All that is part of a selection, without nothing and with itself. */
  partsOf: (selection: number) => readonly number[];
}

/** The smallest blocks of each selection: none is both narrower and shorter than another, or as small. */
export interface SmallestBlocks {
  selections: Selections;
  blocks: readonly (readonly Block[])[];
}

/** How many pairs of a selection and a part of it there are: (n + 1)(n + 2) / 2 of each kind. */
const pairsOf = (kinds: readonly MeshKind[]): number =>
  kinds.reduce((product, { wanted: n }) => (product * (n + 1) * (n + 2)) / 2, 1);

const selectionsOf = (kinds: readonly MeshKind[]): Selections => {
  const step: number[] = [];
  let count = 1;
  for (const { wanted } of kinds) {
    step.push(count);
    count *= wanted + 1;
  }
  const found = new Map<number, number[]>();
  const partsOf = (selection: number): readonly number[] => {
    const known = found.get(selection);
    if (known) return known;
    let parts = [0];
    kinds.forEach(({ wanted }, kind) => {
      const n = Math.floor(selection / step[kind]!) % (wanted + 1);
      parts = Array.from({ length: n + 1 }, (_, k) => k).flatMap((k) => parts.map((part) => part + k * step[kind]!));
    });
    parts.shift();
    found.set(selection, parts);
    return parts;
  };
  return { count, step, partsOf };
};

/** Adds a block unless one that is no larger is there; those it is no larger than go. */
const keepSmallest = (front: Block[], block: Block): void => {
  if (front.some((x) => fits(x, block))) return;
  let kept = 0;
  for (const x of front) if (!fits(block, x)) front[kept++] = x;
  front.length = kept;
  front.push(block);
};

/**
 * All that can be cut from sheets by cuts from edge to edge, by selection of pieces: the smallest blocks that hold
 * it, joined of smaller ones. What fits none of the sheets is left out. Null where there are too many selections for the
 * counted effort. Source: the shape functions of Stockmeyer (1983) and Wang's building up of blocks (1983), from memory.
 *
 * Example: of two pieces of 2 by 3 that may not be turned, the selection of both has a block of 4 by 3 and one of 2 by 6.
 */
export const smallestBlocks = (
  kinds: readonly MeshKind[],
  sheets: readonly Openings[],
  { parts: mostParts, joins: mostJoins }: Pick<Effort, 'parts' | 'joins'> = EFFORTS.usual,
): SmallestBlocks | null => {
  if (pairsOf(kinds) > mostParts) return null;
  const selections = selectionsOf(kinds);
  const blocks: Block[][] = Array.from({ length: selections.count }, () => []);
  let joins = 0;
  for (let all = 1; all < selections.count; all++) {
    const front = blocks[all]!;
    const add = (block: Block) => {
      if (sheets.some((sheet) => fits(block, sheet))) keepSmallest(front, block);
    };
    const kind = selections.step.indexOf(all);
    if (kind >= 0) pieceBlocks(kinds, kind).forEach(add);
    for (const part of selections.partsOf(all)) {
      if (2 * part > all) continue;
      for (const first of blocks[part]!)
        for (const second of blocks[all - part]!) {
          add(joined('across', first, second));
          add(joined('along', first, second));
          if (++joins > mostJoins) return null;
        }
    }
  }
  return { selections, blocks };
};
