import { rounded } from './rounded.ts';

/** Sizes of the drawing, in units of the drawing (pixels on a screen). */
export interface PiecesSizes {
  /** Of all pieces side by side, at most. */
  width: number;
  /** Of one piece, at most. */
  piece: number;
}

interface PiecesDrawn {
  x: number;
  width: number;
  /** Between one piece and the next. */
  between: number[];
}

/** Narrower than that nobody tells one piece from the next. */
const LEAST_PIECE = 4;

/**
 * Pieces side by side in groups, each as wide as the next; narrower where there are many, and without lines between them
 * where there are very many. A group without pieces has no width.
 *
 * Example: 1 and 2 pieces of 14 in 100: from 0, 14 wide, and from 14, 28 wide with a line at 28.
 */
export const piecesGeometry = (groups: readonly number[], { width, piece }: PiecesSizes): PiecesDrawn[] => {
  const all = groups.reduce((sum, count) => sum + count, 0);
  const each = Math.min(piece, width / Math.max(1, all));
  let before = 0;
  return groups.map((count) => {
    const x = before * each;
    before += count;
    const lines = each < LEAST_PIECE ? 0 : Math.max(0, count - 1);
    return {
      ...{ x: rounded(x), width: rounded(count * each) },
      between: Array.from({ length: lines }, (_, at) => rounded(x + (at + 1) * each)),
    };
  });
};
