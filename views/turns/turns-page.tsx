import type { FC } from 'hono/jsx';
import type { TurnsModel } from '../../src/usecases/turns/show-turns.ts';
import type { TurnFacts } from '../../src/usecases/turns/turns-of-plan.ts';
import { Answer, Empty } from '../parts/answer.tsx';
import { ButtonLink } from '../parts/button.tsx';
import { fromMomentText, momentText } from '../parts/clock-text.ts';
import { LongList } from '../parts/long-list.tsx';
import { OtherParts } from '../parts/other-parts.tsx';
import { PLANNING_ONLY } from '../today/work-words.ts';
import { TurnsChart } from './turns-chart.tsx';
import { type TurnsShown, turnsShown } from './turns-shown.ts';
import { outText, turnsAnswer, turnsNote, whomText } from './turns-text.ts';

/** On a phone, where a line of the table is written as a sentence, each moment stands behind what it is the moment of. */
const Moments: FC<{ turn: TurnFacts; today: string }> = ({
  turn: { mayFrom, pouredAt, readyAt, strippedAt },
  today,
}) => (
  <>
    <td data-said="Poured">{momentText(pouredAt, today)}</td>
    <td data-said="May be stripped from">{fromMomentText(mayFrom, today)}</td>
    {strippedAt === null ? <td>Stays in</td> : <td data-said="Stripped">{fromMomentText(strippedAt, today)}</td>}
    {readyAt === null ? <td /> : <td data-said="Fit to go out, by plan,">{fromMomentText(readyAt, today)}</td>}
  </>
);

/** Each has a handful of turns. */
const MOULDS_AT_ONCE = 5;

const Table: FC<{ shown: TurnsShown; today: string }> = ({ shown, today }) => (
  <details class="message turns-told">
    <summary>The same, turn by turn</summary>
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
          <LongList
            items={shown.moulds}
            atOnce={MOULDS_AT_ONCE}
            draw={(mould) => (
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
                      <Moments turn={turn} today={today} />
                    </tr>
                  ))}
              </>
            )}
          />
        </tbody>
      </table>
    </section>
  </details>
);

/** The address of a part of the turns: from which session on, and from which mould. */
const addressFrom = (from: number, mould: number): string => {
  const asked = [...(from > 0 ? [`from=${from}`] : []), ...(mould > 0 ? [`mould=${mould}`] : [])].join('&');
  return asked === '' ? '/turns' : `/turns?${asked}`;
};

const Further: FC<{ shown: TurnsShown }> = ({ shown }) =>
  shown.earlierFrom === null && shown.laterFrom === null ? null : (
    <nav class="buttons" aria-label="Other sessions">
      {shown.earlierFrom !== null && (
        <ButtonLink href={addressFrom(shown.earlierFrom, shown.part.from)}>Sessions before</ButtonLink>
      )}
      {shown.laterFrom !== null && (
        <ButtonLink href={addressFrom(shown.laterFrom, shown.part.from)}>Sessions after</ButtonLink>
      )}
    </nav>
  );

/** Which mould is filled when, for whom, and how long it is taken. */
export const TurnsPage: FC<{ model: TurnsModel; from: number; mould: number }> = ({ model, from, mould }) => {
  const shown = turnsShown(model, from, mould);
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
      <OtherParts part={shown.part} what="mould" href={(place) => addressFrom(shown.from, place)} />
      <TurnsChart shown={shown} today={model.today} thisWeek={model.thisWeek} />
      <p class="hint">{PLANNING_ONLY}</p>
      <Further shown={shown} />
      <Table shown={shown} today={model.today} />
    </>
  );
};
