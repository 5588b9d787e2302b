import { areaOf, type Block, fits } from './block.ts';
import { EFFORTS, type Effort } from './effort.ts';
import type { Openings } from './openings.ts';
import { type Part, partOf } from './part.ts';
import type { SmallestBlocks } from './smallest-blocks.ts';

/** A rest is worth keeping from this size on, laid either way. */
export type Usable = Openings;

/** A way to cut a sheet: the largest rest that is kept in one piece, openings of area, 0 where none is worth keeping. */
export interface Kept {
  area: number;
  part: Part;
}

/**
 * Whether a rest is worth keeping: 3 by 8 is from 2 by 6 on, and so is 8 by 3.
 */
export const isUsable = (rest: Openings, least: Usable): boolean =>
  (rest.across >= least.across && rest.along >= least.along) ||
  (rest.across >= least.along && rest.along >= least.across);

const worthOf = (rest: Openings, least: Usable): number => (isUsable(rest, least) ? areaOf(rest) : 0);

/** Looks for rests with one counted effort for all that is asked. */
export interface RestSearch {
  /** Null where the selection does not go on the sheet. */
  largest: (selection: number, sheet: Openings) => Kept | null;
  /** No rest of that sheet can be larger. */
  atMost: (selection: number, sheet: Openings) => number;
  /** False once the effort is spent: what is found from then on may not be the largest. */
  isProven: () => boolean;
}

/**
 * For a selection of pieces and a sheet, the cutting that keeps the largest usable rest in one piece. Every cut on the
 * way to that rest has some of the pieces on its other side, in one of their smallest blocks: all ways to choose them
 * are looked at. Exact as long as the counted effort lasts.
 *
 * Example: two pieces of 2 by 3, not turned, of a sheet of 6 by 6: side by side they keep 6 by 3.
 */
export const restSearch = (
  { selections, blocks }: SmallestBlocks,
  least: Usable,
  { restSteps: mostSteps }: Pick<Effort, 'restSteps'> = EFFORTS.usual,
): RestSearch => {
  const known = new Map<string, Kept | null>();
  const areas = blocks.map((list) => list.reduce((min, x) => Math.min(min, pieceArea(x)), Number.POSITIVE_INFINITY));
  let steps = 0;

  const atMost = (selection: number, sheet: Openings): number =>
    worthOf(sheet, least) === 0 ? 0 : areaOf(sheet) - (selection === 0 ? 0 : areas[selection]!);

  const whole = (selection: number, sheet: Openings): Kept | null => {
    const block = blocks[selection]!.find((x) => fits(x, sheet));
    return block ? { area: 0, part: partOf(block, sheet) } : null;
  };

  const search = (selection: number, sheet: Openings): Kept | null => {
    if (selection === 0) return { area: worthOf(sheet, least), part: { is: 'rest' } };
    const key = `${sheet.across} ${sheet.along} ${selection}`;
    const found = known.get(key);
    if (found !== undefined) return found;
    let best = whole(selection, sheet);
    const most = atMost(selection, sheet);
    const tryCut = (cut: 'across' | 'along', block: Block, others: number) => {
      const beyond = { ...sheet, [cut]: sheet[cut] - block[cut] };
      if (best && atMost(others, beyond) <= best.area) return;
      const rest = search(others, beyond);
      if (!rest || rest.area <= (best?.area ?? -1)) return;
      const first = partOf(block, { ...sheet, [cut]: block[cut] });
      best = {
        area: rest.area,
        part: beyond[cut] === 0 ? first : { is: 'cut', cut, at: block[cut], first, second: rest.part },
      };
    };
    if (best)
      for (const part of selections.partsOf(selection)) {
        if (best.area >= most || steps > mostSteps) break;
        for (const block of blocks[part]!) {
          if (!fits(block, sheet) || ++steps > mostSteps) continue;
          tryCut('across', block, selection - part);
          tryCut('along', block, selection - part);
        }
      }
    known.set(key, best);
    return best;
  };
  return { largest: search, atMost, isProven: () => steps <= mostSteps };
};

/** The openings that its pieces take, without what is lost between them. */
const pieceArea = (block: Block): number =>
  'kind' in block ? areaOf(block) : pieceArea(block.first) + pieceArea(block.second);
