import type { FC } from 'hono/jsx';
import type { ReadyFacts } from '../../src/usecases/first/ask-when.ts';
import { Answer } from '../parts/answer.tsx';
import { Button } from '../parts/button.tsx';
import { RestsOn } from '../parts/rests-on.tsx';
import { contentsText } from '../words/order-text.ts';
import { type AskedModel, questionOf, rowField } from './asked.ts';
import { ChosenAnswer } from './chosen-answer.tsx';
import { HowSure } from './how-sure.tsx';
import { ReadyAnswer, soonerHeading, soonerOnes } from './ready-answer.tsx';
import { flagsOf, weeksShown } from './weeks-shown.ts';
import { WeeksStrip } from './weeks-strip.tsx';

/** What holds the date is found out once this is looked at, never in place of a newer question; a link without script. */
const HoldsLink: FC<{ asked: AskedModel }> = ({ asked }) => {
  const question = questionOf(asked);
  return (
    <p class="way">
      <a
        href={`/?${question}&holds=yes`}
        data-hx-get={`/?${question}&holds=yes`}
        data-hx-trigger="intersect once delay:300ms, click"
        data-hx-target="#ready"
        data-hx-sync="closest .asking:drop"
      >
        What is it held up by?
      </a>
    </p>
  );
};

/** What takes seconds to find out is asked for by hand. */
const PairsLink: FC<{ asked: AskedModel }> = ({ asked }) => {
  const path = `/two-at-once?${questionOf({ ...asked, wantedOn: '' })}`;
  return (
    <p class="way">
      <a href={path} data-hx-get={path} data-hx-target="closest p" data-hx-swap="outerHTML">
        What would two changes at once bring?
      </a>
    </p>
  );
};

/** While a sooner day is looked for the page asks whether it was found. */
const StillLooking: FC<{ asked: AskedModel }> = ({ asked }) => (
  <div
    data-hx-get={`/?${questionOf(asked)}&still=yes`}
    data-hx-trigger="every 2s"
    data-hx-target="#ready"
    data-hx-sync="closest .asking:drop"
  />
);

/** In place of an answer that is still worked out, which takes it over once it is there. */
const Coming: FC<{ asked: AskedModel }> = ({ asked }) => (
  <div
    data-hx-get={`/?${questionOf(asked)}`}
    data-hx-trigger="load"
    data-hx-target="#ready"
    data-hx-sync="closest .asking:drop"
  >
    <Answer note="All orders of the yard are looked through. The page goes on by itself.">
      <span class="answer-about">{contentsText(asked.contents)}</span>: when it can be ready is being worked out.
    </Answer>
  </div>
);

/** As a first line it says what it is about: "How many? Has to be more than 0." */
const numberText = (error: string | undefined): string | undefined =>
  error && !error.startsWith('How many') ? `How many? ${error}` : error;

/** What is wrong with the question, in place of an answer. */
const wrongText = ({ errors, rows }: AskedModel): string => {
  const wrong = rows.flatMap((_, row) => [
    numberText(errors[rowField('number', row)]) ?? errors[rowField('what', row)] ?? [],
  ]);
  return wrong.flat()[0] ?? 'Choose what is asked for, and how many.';
};

/** What is done with the answer; sent with the question, which stands above it. */
const WithAnswer: FC = () => (
  <div class="buttons">
    <Button kind="main" form="question" action="/orders/new">
      Take order
    </Button>
    <Button form="question" action="/orders/new" name="hold" value="5">
      Hold this date
    </Button>
  </div>
);

/** What would bring the date forward, numbered as on the strip; two changes at once come last. */
const SoonerPart: FC<{ asked: AskedModel; facts: ReadyFacts; today: string }> = ({ asked, facts, today }) => {
  const sooner = soonerOnes(facts, today);
  return (
    <div id="sooner">
      {sooner.length > 0 && (
        <>
          <p>{soonerHeading(facts, today)}</p>
          <ol>
            {sooner.map(({ text }) => (
              <li>{text}</li>
            ))}
          </ol>
        </>
      )}
      {facts.limits === null ? <HoldsLink asked={asked} /> : <PairsLink asked={asked} />}
    </div>
  );
};

/** The answer and all that goes with it: what moves while the question is changed. */
export const ReadyPart: FC<{ asked: AskedModel; today: string }> = ({ asked, today }) => {
  const { facts, restsOn, chosen, errors, contents, sessions, wanted } = asked;
  if (asked.isComing) return <Coming asked={asked} />;
  if (!facts) return <Answer>{wrongText(asked)}</Answer>;
  const { each, rows } = weeksShown(sessions);
  return (
    <>
      <ReadyAnswer facts={facts} asked={contents} today={today} />
      {errors.wantedOn && <p>{errors.wantedOn}</p>}
      {chosen && <ChosenAnswer chosen={chosen} today={today} />}
      {facts.isLooking && <StillLooking asked={asked} />}
      {facts.earliestOn !== null && (
        <>
          <WithAnswer />
          <WeeksStrip
            {...{ each, rows, today }}
            flags={flagsOf(facts, wanted, today)}
            marks={soonerOnes(facts, today).map(({ on }) => on)}
          />
          <SoonerPart {...{ asked, facts, today }} />
          <HowSure asked={asked} facts={facts} />
          <RestsOn guessed={restsOn} />
        </>
      )}
    </>
  );
};
