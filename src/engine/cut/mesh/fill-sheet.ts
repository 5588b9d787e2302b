import type { Filling } from '../fill.ts';
import { type Block, fits, joined, type MeshKind, pieceBlocks } from './block.ts';
import type { Openings } from './openings.ts';
import { inStrips } from './strips.ts';
import { worthBeside } from './worth-beside.ts';

const TOLERANCE = 1e-9;

/** One sheet filled, with how its pieces are cut out of it. */
export interface SheetFilling extends Filling {
  /** Null where nothing is worth anything or fits. */
  block: Block | null;
}

/** A block with its pieces, what they are worth, and what all of a sheet with it could be worth at most. */
interface Build {
  block: Block;
  counts: number[];
  worth: number;
  atMost: number;
}

/** Builds that are to be joined with all others, the one that could be worth most first: a binary heap. */
const mostFirst = () => {
  const heap: Build[] = [];
  const swap = (a: number, b: number) => {
    [heap[a], heap[b]] = [heap[b]!, heap[a]!];
  };
  const push = (build: Build): void => {
    heap.push(build);
    for (let i = heap.length - 1; i > 0; ) {
      const up = (i - 1) >> 1;
      if (heap[up]!.atMost >= heap[i]!.atMost) break;
      swap(up, i);
      i = up;
    }
  };
  const pop = (): Build | undefined => {
    const top = heap[0];
    const last = heap.pop();
    if (heap.length === 0 || !last) return top;
    heap[0] = last;
    for (let i = 0; ; ) {
      const left = 2 * i + 1;
      if (left >= heap.length) break;
      const down = left + 1 < heap.length && heap[left + 1]!.atMost > heap[left]!.atMost ? left + 1 : left;
      if (heap[i]!.atMost >= heap[down]!.atMost) break;
      swap(i, down);
      i = down;
    }
    return top;
  };
  return { push, pop };
};

const keyOf = (block: Block, counts: number[]): string => `${block.across} ${block.along} ${counts.join()}`;

/**
 * Fills one sheet so that its pieces are worth the most, all cuts from edge to edge and no more of a kind than is wanted.
 * Blocks are built up of pieces, the one that could still be worth most first: its own worth and, for what is left
 * of the sheet round it, the most that pieces without number could be worth there. After `mostSteps` joins the best so far is
 * returned, and `most` says what could be. Counted, not timed. Source: Viswanathan and Bagchi, Best-first search methods for constrained
 * two-dimensional cutting stock problems (Operations Research 1993), from memory.
 *
 * Example: of two pieces of 2 by 3 worth 6 and one of 4 by 2 worth 8, a sheet of 4 by 5 holds all: worth 20.
 */
export const fillSheet = (
  kinds: readonly MeshKind[],
  worth: ArrayLike<number>,
  sheet: Openings,
  mostSteps: number,
  mostSums?: number,
): SheetFilling => {
  const beside = worthBeside(kinds, worth, sheet, mostSums);
  const start = inStrips(kinds, worth, sheet);
  let best: { block: Block | null; counts: number[]; worth: number } = start;
  let steps = 0;
  const open = mostFirst();
  const closed: Build[] = [];
  const seen = new Set<string>();
  const add = (block: Block, counts: number[], sum: number): void => {
    if (!fits(block, sheet)) return;
    const atMost = sum + beside(block);
    if (sum > best.worth + TOLERANCE) best = { block, counts, worth: sum };
    if (atMost <= best.worth + TOLERANCE) return;
    const key = keyOf(block, counts);
    if (seen.has(key)) return;
    seen.add(key);
    open.push({ block, counts, worth: sum, atMost });
  };
  const join = (a: Build, b: Build): void => {
    const counts = a.counts.map((n, i) => n + b.counts[i]!);
    if (counts.some((n, i) => n > kinds[i]!.wanted)) return;
    add(joined('across', a.block, b.block), counts, a.worth + b.worth);
    add(joined('along', a.block, b.block), counts, a.worth + b.worth);
  };
  kinds.forEach((kind, i) => {
    if (kind.wanted === 0 || worth[i]! <= 0) return;
    for (const block of pieceBlocks(kinds, i))
      add(
        block,
        kinds.map((_, k) => (k === i ? 1 : 0)),
        worth[i]!,
      );
  });
  let most = best.worth;
  for (let next = open.pop(); next; next = open.pop()) {
    if (next.atMost <= best.worth + TOLERANCE) break;
    if (steps >= mostSteps) {
      most = next.atMost;
      break;
    }
    closed.push(next);
    for (const other of closed) {
      steps++;
      join(next, other);
    }
  }
  return { ...best, most: Math.max(most, best.worth), steps };
};
