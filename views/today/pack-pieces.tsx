import type { FC } from 'hono/jsx';
import { listText } from '../../shared/list-text.ts';
import type { PieceToPack } from '../../src/usecases/orders/pieces-to-pack.ts';
import { momentText } from '../parts/clock-text.ts';
import { Wrong } from '../parts/field.tsx';

interface PackPiecesProps {
  pieces: readonly PieceToPack[];
  today: string;
  /** As it was ticked, where the form came back; null: as the plan has it. */
  typed: Readonly<Record<string, string>> | null;
  wrong: string | undefined;
}

const markText = ({ mould, filledAt }: PieceToPack, today: string): string =>
  `${mould} of ${momentText(filledAt, today)}`;

/** "Panel 900 marked 900 no. 1 of Sat 10 Apr, 9:25" of those that the plan takes. */
export const PiecesToTake: FC<Pick<PackPiecesProps, 'pieces' | 'today'>> = ({ pieces, today }) =>
  pieces.length === 0 ? null : (
    <p class="quiet">
      Take the pieces marked {listText(pieces.filter(({ taken }) => taken).map((piece) => markText(piece, today)))}.
    </p>
  );

/** The pieces that go into it, ticked as the plan has them; opened only where others were taken. */
export const PackPieces: FC<PackPiecesProps> = ({ pieces, today, typed, wrong }) =>
  pieces.length === 0 ? null : (
    <details class="not-good" open={wrong !== undefined}>
      <summary>Other pieces</summary>
      <ul class="pours">
        {pieces.map((piece) => (
          <li>
            <label class="choice">
              <input
                type="checkbox"
                name={`piece:${piece.id}`}
                value="yes"
                checked={typed === null ? piece.taken : typed[`piece:${piece.id}`] === 'yes'}
              />
              <span>
                {piece.piece}: {markText(piece, today)}
                {piece.asideFor !== null && <span class="quiet">, set aside for {piece.asideFor}</span>}
              </span>
            </label>
          </li>
        ))}
      </ul>
      <Wrong message={wrong} name="pieces" />
    </details>
  );
