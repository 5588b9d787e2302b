import { rounded } from './rounded.ts';

/** How large a piece is, in mm. */
export interface PieceSize {
  lengthMm: number;
  heightMm: number;
  thicknessMm: number;
}

interface Box {
  x: number;
  y: number;
  width: number;
  height: number;
}

/** Nothing is so small that it could not be seen. */
const LEAST = 2;

const seen = (mm: number, scale: number): number => rounded(Math.max(LEAST, mm * scale));

/** Sizes of a drawing in its own units, which are pixels on a screen that shows it at its full size. */
export interface PieceSizes {
  /** Of the longest piece of all that are drawn beside one another. */
  width: number;
  /** Between a piece from the front and its end. */
  gap: number;
}

export interface PieceDrawn {
  width: number;
  height: number;
  front: Box;
  end: Box;
}

/**
 * A piece from the front and, to its right, its end, to the scale of the longest piece of all.
 *
 * Example: 600 by 200 by 40 mm where the longest is 1200, in 120: 60 by 20 from the front, an end 4 wide.
 */
export const pieceDrawn = (piece: PieceSize, longestMm: number, { width, gap }: PieceSizes): PieceDrawn => {
  const scale = width / Math.max(longestMm, piece.lengthMm, 1);
  const front = { x: 0, y: 0, width: seen(piece.lengthMm, scale), height: seen(piece.heightMm, scale) };
  const end = { x: rounded(front.width + gap), y: 0, width: seen(piece.thicknessMm, scale), height: front.height };
  return { width: rounded(end.x + end.width), height: front.height, front, end };
};

/** Pieces of one size, so many of them. */
export interface SamePieces extends Pick<PieceSize, 'lengthMm' | 'heightMm'> {
  count: number;
}

export interface PiecesLaid {
  width: number;
  height: number;
  pieces: Box[];
}

/**
 * Pieces from the front, laid out beside one another in rows, to scale: the longest is as wide as a row at most. Those of one size
 * stand together, in rows of as many each, so that sides of a kit are seen in pairs.
 *
 * Example: four of 600 by 200 mm in rows of 200 with gaps of 10, of which a tenth is drawn: two in each of two rows, though three
 * would fit.
 */
export const piecesLaid = (pieces: readonly SamePieces[], scale: number, { width, gap }: PieceSizes): PiecesLaid => {
  const boxes: Box[] = [];
  let [x, y, tallest] = [0, 0, 0];
  for (const { lengthMm, heightMm, count } of pieces) {
    const box = { width: seen(lengthMm, scale), height: seen(heightMm, scale) };
    const fits = (room: number) => Math.floor((room + gap) / (box.width + gap));
    const begins = x > 0 && fits(width - x) < count;
    const rows = Math.ceil(count / Math.max(1, fits(begins ? width : width - x)));
    const inRow = Math.ceil(count / Math.max(1, rows));
    for (let one = 0; one < count; one++) {
      if (x > 0 && (one === 0 ? begins : one % inRow === 0)) [x, y, tallest] = [0, rounded(y + tallest + gap), 0];
      boxes.push({ x, y, ...box });
      x = rounded(x + box.width + gap);
      tallest = Math.max(tallest, box.height);
    }
  }
  return {
    width: rounded(Math.max(0, ...boxes.map((box) => box.x + box.width))),
    height: rounded(y + tallest),
    pieces: boxes,
  };
};
