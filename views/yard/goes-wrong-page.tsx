import type { FC } from 'hono/jsx';
import type { GoesWrongModel, PiecesFacts } from '../../src/usecases/yard/show-goes-wrong.ts';
import { Answer } from '../parts/answer.tsx';
import { ABOUT } from './about-page.tsx';
import {
  countedText,
  deliveriesText,
  goesWrongAnswer,
  oneInText,
  piecesText,
  promisedByText,
  sessionsText,
} from './goes-wrong-text.ts';
import { MEASURED } from './measured-text.ts';

interface Row {
  name: string;
  share: number;
  seen: string;
}

/** Shares one below another, the worst first. */
const Shares: FC<{ of: string; rows: readonly Row[] }> = ({ of, rows }) => (
  <table class="facts-table">
    <thead>
      <tr>
        <th scope="col">{of}</th>
        <th scope="col" class="number">
          Counted on
        </th>
        <th scope="col">On record</th>
      </tr>
    </thead>
    <tbody>
      {rows.map(({ name, share, seen }) => (
        <tr>
          <th scope="row">{name}</th>
          <td class="number">{oneInText(share)}</td>
          <td>{seen}</td>
        </tr>
      ))}
    </tbody>
  </table>
);

const rowsOf = (pieces: readonly PiecesFacts[]): Row[] =>
  pieces.map((one) => ({ name: one.name, share: one.share, seen: piecesText(one) }));

/** What goes wrong in the yard, how often, and on how many records that rests. */
export const GoesWrongPage: FC<{ model: GoesWrongModel }> = ({ model }) => {
  const { pieces, castings, moulds, sessions, deliveries, guessed } = model;
  return (
    <>
      <Answer note={promisedByText(model)}>{goesWrongAnswer(model)}</Answer>
      <section>
        <h2>Pieces that are not good</h2>
        <p>{countedText(pieces, guessed.pieces, piecesText(pieces))}</p>
        {castings.length > 0 && <Shares of="Piece" rows={rowsOf(castings)} />}
        {moulds.length > 0 && <Shares of="Mould" rows={rowsOf(moulds)} />}
        {moulds.length > 0 && (
          <p class="quiet">A mould with few turns leans on its piece, and a piece on all of the yard.</p>
        )}
      </section>
      <section>
        <h2>Days of work lost</h2>
        <p>{countedText(sessions, guessed.sessions, sessionsText(sessions))}</p>
        <p class="quiet">
          A day called off two days ahead or more is a day off, and not lost. A day on which nothing was recorded, and
          that nobody called off, is not counted.
        </p>
      </section>
      <section>
        <h2>Deliveries that come late</h2>
        {deliveries.length === 0 ? (
          <p>Counted on: {oneInText(guessed.deliveries)}, a guess. Nothing is on record yet.</p>
        ) : (
          <Shares
            of="Supplier"
            rows={deliveries.map((one) => ({
              ...{ name: one.supplier ?? 'Nobody named', share: one.share, seen: deliveriesText(one) },
            }))}
          />
        )}
      </section>
      <section>
        <h2>Minutes</h2>
        <p class="way">
          <a href={MEASURED}>What the work takes, beside the minutes planned</a>
        </p>
      </section>
      <p class="way">
        <a href={ABOUT}>How often a date to promise is to be kept</a>
      </p>
      <p class="way">
        <a href="/yard">Your yard</a>
      </p>
    </>
  );
};
