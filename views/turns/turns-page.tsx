import type { FC } from 'hono/jsx';
import type { TurnsModel } from '../../src/usecases/turns-model.ts';
import { Answer, Empty } from '../parts/answer.tsx';
import { ButtonLink } from '../parts/button.tsx';
import { TurnsChart } from './turns-chart.tsx';
import { type TurnsShown, turnsShown } from './turns-shown.ts';
import { fromMomentText, momentText, outText, turnsAnswer, turnsNote, whomText } from './turns-text.ts';

const Table: FC<{ shown: TurnsShown; today: string }> = ({ shown, today }) => (
  <section>
    <h2>The same, turn by turn</h2>
    <section class="scroll" tabindex={0} aria-label="Turn by turn">
      <table class="turns-table">
        <thead>
          <tr>
            <th scope="col">Mould</th>
            <th scope="col">For</th>
            <th scope="col">Piece</th>
            <th scope="col">Poured</th>
            <th scope="col">May be stripped from</th>
            <th scope="col">Stripped</th>
            <th scope="col">Fit to go out, by plan</th>
          </tr>
        </thead>
        <tbody>
          {shown.moulds.map((mould) => (
            <>
              {mould.outOfUse && (
                <tr>
                  <th scope="row">{mould.mould}</th>
                  <td colspan={6}>
                    {outText(mould, today)[0]?.toUpperCase()}
                    {outText(mould, today).slice(1)}
                  </td>
                </tr>
              )}
              {shown.turns
                .filter((turn) => turn.mould === mould.mould)
                .map((turn) => (
                  <tr id={`turn-${turn.id}`}>
                    <th scope="row">{turn.mould}</th>
                    <td>{whomText(turn)}</td>
                    <td>{turn.piece}</td>
                    <td>{momentText(turn.pouredAt, today)}</td>
                    <td>{fromMomentText(turn.mayFrom, today)}</td>
                    <td>{turn.strippedAt === null ? 'Stays in' : fromMomentText(turn.strippedAt, today)}</td>
                    <td>{turn.readyAt === null ? '' : fromMomentText(turn.readyAt, today)}</td>
                  </tr>
                ))}
            </>
          ))}
        </tbody>
      </table>
    </section>
  </section>
);

const Further: FC<{ shown: TurnsShown }> = ({ shown }) =>
  shown.earlierFrom === null && shown.laterFrom === null ? null : (
    <nav class="buttons" aria-label="Other sessions">
      {shown.earlierFrom !== null && (
        <ButtonLink href={shown.earlierFrom === 0 ? '/turns' : `/turns?from=${shown.earlierFrom}`}>
          Sessions before
        </ButtonLink>
      )}
      {shown.laterFrom !== null && <ButtonLink href={`/turns?from=${shown.laterFrom}`}>Sessions after</ButtonLink>}
    </nav>
  );

/** Which mould is filled when, for whom, and how long it is taken. */
export const TurnsPage: FC<{ model: TurnsModel & { today: string; thisWeek: string }; from: number }> = ({
  model,
  from,
}) => {
  const shown = turnsShown(model, from);
  if (shown.sessions.length === 0)
    return (
      <>
        <Answer>No mould has anything to do.</Answer>
        <Empty>
          Turns show here when <a href="/orders/new">an order is taken</a> that has to be poured. What the yard lacks
          for it stands at <a href="/yard">Your yard</a>.
        </Empty>
      </>
    );
  return (
    <>
      <Answer note={turnsNote(shown, model.today)}>{turnsAnswer(shown, model.today)}</Answer>
      <TurnsChart shown={shown} today={model.today} thisWeek={model.thisWeek} />
      <Further shown={shown} />
      <Table shown={shown} today={model.today} />
    </>
  );
};
