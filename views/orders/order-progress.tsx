import type { FC } from 'hono/jsx';
import type { OrderModel } from '../../src/usecases/orders/show-order.ts';
import { type PiecesSizes, piecesGeometry } from '../charts/pieces-geometry.ts';
import { PROGRESS, PROGRESS_WORDS, progressText, progressTitle } from './progress-text.ts';

type Progress = OrderModel['together']['progress'];

const SIZES: PiecesSizes = { width: 320, piece: 20 };
const HEIGHT = 22;
const EDGE = 1;

/** The fills that are patterns: what sets is hatched as it is on Turns, what cures is dotted. */
const Patterns: FC = () => (
  <svg class="piece-patterns" width="0" height="0" aria-hidden="true" focusable="false">
    <defs>
      <pattern id="piece-curing" width="5" height="5" patternUnits="userSpaceOnUse">
        <circle class="piece-dot" cx="2.5" cy="2.5" r="1.4" />
      </pattern>
      <pattern id="piece-in-mould" width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <line class="piece-hatch" x1="0" y1="0" x2="0" y2="5" />
      </pattern>
    </defs>
  </svg>
);

const Pieces: FC<{ counts: readonly number[]; most: number }> = ({ counts, most }) => {
  const groups = piecesGeometry(counts, { width: SIZES.width, piece: Math.min(SIZES.piece, SIZES.width / most) });
  return (
    <svg
      class="pieces-drawn"
      viewBox={`0 0 ${SIZES.width + 2 * EDGE} ${HEIGHT}`}
      width={SIZES.width + 2 * EDGE}
      height={HEIGHT}
      aria-hidden="true"
      focusable="false"
    >
      {groups.map(
        ({ x, width, between }, at) =>
          width > 0 && (
            <g class={`piece is-${PROGRESS[at]}`} transform={`translate(${EDGE} ${EDGE})`}>
              <rect class="piece-ground" x={x} y={0} width={width} height={HEIGHT - 2 * EDGE} />
              <rect class="piece-fill" x={x} y={0} width={width} height={HEIGHT - 2 * EDGE} />
              {between.map((line) => (
                <line class="piece-edge" x1={line} x2={line} y1={0} y2={HEIGHT - 2 * EDGE} />
              ))}
            </g>
          ),
      )}
    </svg>
  );
};

/** The looks that are on the page, each beside its word. */
const Key: FC<{ progress: Progress }> = ({ progress }) => (
  <p class="strip-key">
    {PROGRESS.filter((part) => progress.some((piece) => piece[part] > 0)).map((part) => (
      <span>
        <svg width="16" height="16" viewBox="0 0 16 16" aria-hidden="true" focusable="false">
          <g class={`piece is-${part}`}>
            <rect class="piece-ground" x="1" y="1" width="14" height="14" />
            <rect class="piece-fill" x="1" y="1" width="14" height="14" />
          </g>
        </svg>{' '}
        {PROGRESS_WORDS[part]}
      </span>
    ))}
  </p>
);

/** How far each piece of an order is: a row a kind, a box a piece, and the same in words. */
export const OrderProgress: FC<{ progress: Progress }> = ({ progress }) => {
  if (progress.length === 0) return null;
  const counts = progress.map((piece) => PROGRESS.map((part) => piece[part]));
  const most = Math.max(...counts.map((row) => row.reduce((sum, count) => sum + count, 0)));
  return (
    <figure class="order-progress">
      <figcaption>{progressTitle(progress)}</figcaption>
      <Patterns />
      <ul>
        {progress.map((piece, at) => (
          <li>
            <strong>{piece.name}</strong> <span>{progressText(piece)}</span>
            <Pieces counts={counts[at]!} most={most} />
          </li>
        ))}
      </ul>
      <Key progress={progress} />
    </figure>
  );
};
