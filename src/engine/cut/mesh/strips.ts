import { fillStick } from '../fill.ts';
import { type Block, joined, type MeshKind } from './block.ts';
import type { Openings } from './openings.ts';

const STEPS_PER_STRIP = 300;

interface Filled {
  block: Block | null;
  counts: number[];
  worth: number;
}

/** A strip from edge to edge, so wide, filled along its length with what is worth most and no wider. */
const stripOf = (
  kinds: readonly MeshKind[],
  worth: ArrayLike<number>,
  left: number[],
  wide: { cut: 'across' | 'along'; size: number },
  length: number,
): Filled | null => {
  const over = wide.cut === 'across' ? 'along' : 'across';
  const pieces = kinds.map(({ ways }) => {
    const best = ways.filter((x) => x.size[wide.cut] <= wide.size).sort((a, b) => a.size[over] - b.size[over])[0];
    return best ?? null;
  });
  const room = pieces.map((x) => x?.size[over] ?? length + 1);
  const wanted = left.map((n, i) => (pieces[i] ? n : 0));
  const filling = fillStick({ room, worth, wanted }, length, STEPS_PER_STRIP);
  const blocks = filling.counts.flatMap((n, kind) => {
    const piece = pieces[kind];
    return piece ? Array.from({ length: n }, (): Block => ({ ...piece.size, kind, isTurned: piece.isTurned })) : [];
  });
  if (blocks.length === 0) return null;
  return { block: blocks.reduce((a, b) => joined(over, a, b)), counts: filling.counts, worth: filling.worth };
};

/** Strips one after another, each the one that is worth most for its width. */
const stripsOf = (
  kinds: readonly MeshKind[],
  worth: ArrayLike<number>,
  sheet: Openings,
  cut: 'across' | 'along',
): Filled => {
  const left = kinds.map((x) => x.wanted);
  const over = cut === 'across' ? 'along' : 'across';
  const all: Filled = { block: null, counts: left.map(() => 0), worth: 0 };
  for (let space = sheet[cut]; ; ) {
    const sizes = new Set(kinds.flatMap((x, i) => (left[i]! > 0 ? x.ways.map((way) => way.size[cut]) : [])));
    let best: (Filled & { size: number }) | null = null;
    for (const size of sizes) {
      const strip = size <= space ? stripOf(kinds, worth, left, { cut, size }, sheet[over]) : null;
      if (strip && (!best || strip.worth / size > best.worth / best.size)) best = { ...strip, size };
    }
    if (!best?.block || best.worth <= 0) return all;
    all.block = all.block ? joined(cut, all.block, best.block) : best.block;
    all.worth += best.worth;
    best.counts.forEach((n, i) => {
      left[i] = left[i]! - n;
      all.counts[i] = all.counts[i]! + n;
    });
    space -= best.block[cut];
  }
};

/**
 * A sheet filled in strips from edge to edge, across or along, whichever is worth more: what one does by hand, and what a
 * search starts from. Sizes in openings.
 *
 * Example: five pieces of 2 by 3 worth 6 and a sheet of 6 by 6: strips across hold all five.
 */
export const inStrips = (kinds: readonly MeshKind[], worth: ArrayLike<number>, sheet: Openings): Filled => {
  const across = stripsOf(kinds, worth, sheet, 'across');
  const along = stripsOf(kinds, worth, sheet, 'along');
  return along.worth > across.worth ? along : across;
};
