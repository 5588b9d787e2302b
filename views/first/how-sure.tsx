import type { FC } from 'hono/jsx';
import type { ReadyFacts } from '../../src/usecases/first/ask-when.ts';
import type { QuestionOdds } from '../../src/usecases/first/odds-of-question.ts';
import { howSureText } from '../orders/odds-text.ts';
import { Odds, OddsMore } from '../orders/order-odds.tsx';
import { Answer } from '../parts/answer.tsx';
import { contentsText } from '../words/order-text.ts';
import { type AskedModel, questionOf } from './asked.ts';
import { byOddsText } from './how-sure-text.ts';

const LATE = 'How sure its day is could not be found out just now. Ask again in a while.';

/** Where the answer stands on the first page: how sure its day is, worked out when it is asked; a page of its own without script. */
export const HowSure: FC<{ asked: AskedModel; facts: ReadyFacts }> = ({ asked, facts }) => {
  const path = `/how-sure?${questionOf(asked)}`;
  return (
    <div id="how-sure">
      <p class="way">
        <a href={path} data-hx-get={path} data-hx-target="closest p" data-hx-swap="outerHTML">
          How sure is that day?
        </a>
      </p>
      {facts.promiseOdds === null && <p class="quiet">{byOddsText(facts)}</p>}
    </div>
  );
};

/** The odds alone, for where the question stands already. */
export const QuestionOddsPart: FC<{ model: QuestionOdds }> = ({ model }) => {
  const { odds, today, offered, spares: askedSpares } = model;
  return <Odds {...{ odds, today, offered, askedSpares }} />;
};

export const HowSurePage: FC<{ model: QuestionOdds; back: string }> = ({ model, back }) => {
  const { asked, odds, today, offered, spares: askedSpares } = model;
  return (
    <>
      {asked === null ? (
        <Answer note="Nothing was recorded by asking.">Choose what is asked for, and how many.</Answer>
      ) : (
        <>
          <Answer note="By today's plan, beside all that is promised.">
            {odds === null ? LATE : `${contentsText(asked)}: ${howSureText(odds, offered, today)}`}
          </Answer>
          {odds !== null && <OddsMore {...{ odds, today, offered, askedSpares }} />}
        </>
      )}
      <p class="way">
        <a href={back}>Back to the question</a>
      </p>
    </>
  );
};
