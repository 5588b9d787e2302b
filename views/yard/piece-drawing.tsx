import type { Child, FC } from 'hono/jsx';
import type { YardCasting } from '../../src/usecases/yard/show-yard-castings.ts';
import type { YardKit } from '../../src/usecases/yard/show-yard-kits.ts';
import { Boxes, short } from '../charts/drawn.tsx';
import { type PieceSizes, pieceDrawn, piecesLaid } from '../charts/piece-to-scale-geometry.ts';

const SIZES: PieceSizes = { width: 200, gap: 10 };
/** Between pieces of a kit: two of the longest stand in a row. */
const PIECE_GAP = 6;
/** A line's own width lies half outside of what it is drawn round. */
const EDGE = 1;

const Drawing: FC<{ width: number; height: number; children?: Child }> = ({ width, height, children }) => (
  <svg
    class="to-scale"
    viewBox={`${-EDGE} ${-EDGE} ${short(width + 2 * EDGE)} ${short(height + 2 * EDGE)}`}
    width={short(width + 2 * EDGE)}
    height={short(height + 2 * EDGE)}
    aria-hidden="true"
    focusable="false"
  >
    {children}
  </svg>
);

/** A piece from the front and from its end, as long as it is beside the longest one of the yard. Its size stands beside it in words. */
export const PieceDrawing: FC<{ size: NonNullable<YardCasting['sizeMm']>; longestMm: number }> = ({
  size,
  longestMm,
}) => {
  const { width, height, front, end } = pieceDrawn(size, longestMm, SIZES);
  return (
    <Drawing width={width} height={height}>
      <Boxes look="plan-panel" boxes={[front]} />
      <Boxes look="plan-end" boxes={[end]} />
    </Drawing>
  );
};

/** The longest of some pieces; 0 where nobody said how long they are. */
export const longestOf = (sizes: readonly ({ lengthMm: number } | null)[]): number =>
  Math.max(0, ...sizes.map((size) => size?.lengthMm ?? 0));

/** The pieces of a kit laid out from the front, as long as they are beside the longest one of all kits. */
export const KitPieces: FC<{ pieces: YardKit['drawn']; longestMm: number }> = ({ pieces, longestMm }) => {
  const laid = piecesLaid(pieces, SIZES.width / Math.max(1, longestMm), {
    width: 2 * SIZES.width + PIECE_GAP,
    gap: PIECE_GAP,
  });
  return (
    <Drawing width={laid.width} height={laid.height}>
      <Boxes look="plan-panel" boxes={laid.pieces} />
    </Drawing>
  );
};
