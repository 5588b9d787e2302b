import type { FC } from 'hono/jsx';
import { minuteOf } from '../../shared/time.ts';
import type { TracedPieceFacts } from '../../src/usecases/trace/pieces-seen.ts';
import { mouldPagePath } from '../moulds/mould-facts.ts';
import { momentText } from '../parts/clock-text.ts';
import { batchPath } from './batch-path.ts';
import { piecePath } from './piece-path.ts';
import { bagsText, cameOutText, placeText } from './trace-text.ts';

interface PieceProps {
  piece: TracedPieceFacts;
  today: string;
  /** The batch is what the page is of: it is not said again. */
  inBatch: boolean;
}

const FromBatch: FC<Omit<PieceProps, 'inBatch'>> = ({ piece: { batch, bagDates }, today }) =>
  batch === null ? (
    <p class="quiet">Its batch was not recorded.</p>
  ) : (
    <p class="quiet">
      <a href={batchPath(batch)}>Batch</a>: {bagsText(bagDates, today)}.
    </p>
  );

const Piece: FC<PieceProps> = ({ piece, today, inBatch }) => (
  <li>
    <p class="traced-mark">
      <a href={piecePath({ minute: minuteOf(piece.filledAt), mould: piece.mould })}>
        <strong>{piece.piece}</strong>
      </a>
      <br />
      <a href={mouldPagePath(piece.mould)}>{piece.mould}</a>, {momentText(piece.filledAt, today)}
    </p>
    <div>
      <p>
        {piece.order === null ? (
          placeText(piece)
        ) : (
          <a href={`/orders/${encodeURIComponent(piece.order)}`}>{placeText(piece)}</a>
        )}
        .
      </p>
      {cameOutText(piece, today) && <p class="quiet">{cameOutText(piece, today)}.</p>}
      {!inBatch && <FromBatch piece={piece} today={today} />}
    </div>
  </li>
);

/** Pieces by their marks, each with where it is and what it is of. */
export const TracedPieces: FC<{ pieces: readonly TracedPieceFacts[]; today: string; inBatch?: boolean }> = ({
  pieces,
  today,
  inBatch = false,
}) => (
  <ol class="traced">
    {pieces.map((piece) => (
      <Piece piece={piece} today={today} inBatch={inBatch} />
    ))}
  </ol>
);
