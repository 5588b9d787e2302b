import type { Openings, Size, WireGrid } from './openings.ts';
import type { Part } from './part.ts';

/** A part of a sheet, mm from its left and its upper edge; cut between wires, so whole openings. */
export interface Rect extends Size {
  xMm: number;
  yMm: number;
}

/** One cut from edge to edge of the part that is there by then, in the order of cutting. */
export interface SheetCutLine {
  /** From 1 on. */
  number: number;
  /** Across: the cut runs along the length, so far from the left edge; along: it runs across, so far from the upper edge. */
  cut: 'across' | 'along';
  xMm: number;
  yMm: number;
  lengthMm: number;
}

/** A sheet laid out: cuts in their order, pieces by kind, and what is left over. */
export interface Layout {
  cuts: SheetCutLine[];
  pieces: (Rect & { kind: number; isTurned: boolean })[];
  rests: (Rect & { openings: Openings })[];
}

const rectOf = (x: number, y: number, space: Openings, grid: WireGrid): Rect => ({
  xMm: x * grid.acrossMm,
  yMm: y * grid.alongMm,
  widthMm: space.across * grid.acrossMm,
  lengthMm: space.along * grid.alongMm,
});

/**
 * Where on the sheet everything lies, and the cuts in the order in which they are made: a part is cut in two, then the
 * first of them is cut up whole, then the second.
 *
 * Example: a piece of 2 by 3 openings in 2 by 5, mesh of 50: cut 1 along at 150 mm; a rest of 100 by 100 below it.
 */
export const layOut = (part: Part, space: Openings, grid: WireGrid): Layout => {
  const layout: Layout = { cuts: [], pieces: [], rests: [] };
  const place = (at: Part, x: number, y: number, size: Openings): void => {
    const rect = rectOf(x, y, size, grid);
    if (at.is === 'piece') {
      layout.pieces.push({ ...rect, kind: at.kind, isTurned: at.isTurned });
      return;
    }
    if (at.is === 'rest') {
      layout.rests.push({ ...rect, openings: size });
      return;
    }
    const { cut } = at;
    const number = layout.cuts.length + 1;
    const edge = cut === 'across' ? { xMm: (x + at.at) * grid.acrossMm } : { yMm: (y + at.at) * grid.alongMm };
    const lengthMm = cut === 'across' ? rect.lengthMm : rect.widthMm;
    layout.cuts.push({ number, cut, xMm: rect.xMm, yMm: rect.yMm, lengthMm, ...edge });
    place(at.first, x, y, { ...size, [cut]: at.at });
    const [nextX, nextY] = cut === 'across' ? [x + at.at, y] : [x, y + at.at];
    place(at.second, nextX, nextY, { ...size, [cut]: size[cut] - at.at });
  };
  place(part, 0, 0, space);
  return layout;
};
