import type { FC } from 'hono/jsx';
import type { ReadyFacts } from '../../src/usecases/first/ask-when.ts';
import type { FirstModel } from '../../src/usecases/first/show-first.ts';
import type { QuestionModel } from '../../src/usecases/first/show-question.ts';
import { OrderSentence } from '../orders/order-sentence.tsx';
import { Answer, Empty } from '../parts/answer.tsx';
import { Button, ButtonLink } from '../parts/button.tsx';
import { DayField } from '../parts/day-field.tsx';
import { dayText } from '../parts/day-text.ts';
import { type FieldErrors, SelectField, TextField } from '../parts/field.tsx';
import { HeldNotices } from '../parts/held-notices.tsx';
import { LongList } from '../parts/long-list.tsx';
import { type DoneNotice, Notice } from '../parts/notice.tsx';
import { quantityText } from '../parts/quantity-text.ts';
import { RestsOn } from '../parts/rests-on.tsx';
import { whatOptions } from '../parts/what-options.ts';
import { ChosenAnswer } from './chosen-answer.tsx';
import { NextSession } from './next-session.tsx';
import { ReadyAnswer, soonerHeading, soonerSentences } from './ready-answer.tsx';

/** What was asked, as typed, and what came of it: facts, or what was wrong with the question. */
export interface AskedModel extends Omit<QuestionModel, 'answer' | 'yardName' | 'today'> {
  number: string;
  wantedOn: string;
  facts: ReadyFacts | null;
  errors: FieldErrors;
}

/** What holds the date is found out once the number stands still, never in place of a newer question; a link without script. */
const HoldsLink: FC<{ asked: AskedModel }> = ({ asked: { what, number, wantedOn } }) => {
  const question = new URLSearchParams({ what, number, ...(wantedOn ? { wantedOn } : {}) }).toString();
  return (
    <p>
      <a
        href={`/?${question}`}
        hx-get={`/?${question}&holds=yes`}
        hx-trigger="load delay:300ms, click"
        hx-target="#ready"
        hx-sync="closest .asking:drop"
      >
        What holds it?
      </a>
    </p>
  );
};

/** What takes seconds to find out is asked for by hand. */
const PairsLink: FC<{ asked: AskedModel }> = ({ asked: { what, number } }) => {
  const path = `/two-at-once?${new URLSearchParams({ what, number })}`;
  return (
    <p>
      <a href={path} hx-get={path} hx-target="closest p" hx-swap="outerHTML">
        What would two changes at once bring?
      </a>
    </p>
  );
};

/** While a sooner day is looked for the page asks whether it was found. */
const StillLooking: FC<{ asked: AskedModel }> = ({ asked: { what, number, wantedOn } }) => (
  <div
    hx-get={`/?${new URLSearchParams({ what, number, ...(wantedOn ? { wantedOn } : {}), still: 'yes' })}`}
    hx-trigger="every 2s"
    hx-target="#ready"
    hx-sync="closest .asking:drop"
  />
);

/** As a first line it says what it is about: "How many? Has to be more than 0." */
const numberText = (error: string | undefined): string | undefined =>
  error && !error.startsWith('How many') ? `How many? ${error}` : error;

const ReadyPart: FC<{ asked: AskedModel; today: string }> = ({ asked, today }) => {
  const { facts, restsOn, errors } = asked;
  return facts ? (
    <>
      <ReadyAnswer facts={facts} today={today} />
      {facts.isLooking && <StillLooking asked={asked} />}
      {facts.earliestOn !== null && <RestsOn guessed={restsOn} />}
    </>
  ) : (
    <Answer>{numberText(errors.number) ?? errors.what ?? 'Choose what is asked for, and how many.'}</Answer>
  );
};

/** Below the question, so that it does not push the number about that is being changed. */
const SoonerPart: FC<{ asked: AskedModel; today: string }> = ({ asked, today }) => {
  const { facts, chosen, errors } = asked;
  if (!facts || facts.earliestOn === null) return chosen && <ChosenAnswer chosen={chosen} today={today} />;
  const sentences = soonerSentences(facts, today);
  return (
    <>
      {errors.wantedOn && <p>{errors.wantedOn}</p>}
      {chosen && <ChosenAnswer chosen={chosen} today={today} />}
      {sentences.length > 0 && (
        <>
          <p>{soonerHeading(facts, today)}</p>
          <ul>
            {sentences.map((sentence) => (
              <li>{sentence}</li>
            ))}
          </ul>
        </>
      )}
      {facts.limits === null ? <HoldsLink asked={asked} /> : <PairsLink asked={asked} />}
    </>
  );
};

/** The parts of the page that move while the number is changed: the answer, and what goes with it to its own place. */
export const LiveParts: FC<{ asked: AskedModel; today: string }> = (props) => (
  <>
    <ReadyPart {...props} />
    <div id="sooner" hx-swap-oob="true">
      <SoonerPart {...props} />
    </div>
  </>
);

const Question: FC<{ asked: AskedModel; today: string }> = ({ asked, today }) => (
  <form
    class="question"
    data-address
    method="get"
    action="/"
    hx-get="/"
    hx-trigger="input delay:60ms"
    hx-target="#ready"
    hx-sync="closest .asking:replace"
    aria-label="When could it be ready?"
  >
    <SelectField
      name="what"
      label="When could it be ready?"
      value={asked.what}
      options={whatOptions(asked.offers)}
      errors={asked.errors}
    />
    <TextField
      name="number"
      label="How many"
      type="number"
      min={1}
      width="short"
      value={asked.number}
      errors={asked.errors}
    />
    <DayField name="wantedOn" label="Wanted by" min={today} value={asked.wantedOn} errors={asked.errors} />
    <div class="buttons">
      <Button>Ask</Button>
      <button type="submit" class="button main" formaction="/orders/new">
        Take order
      </button>
      <button type="submit" class="button plain" formaction="/orders/new" name="hold" value="5">
        Hold this date
      </button>
      <ButtonLink href="/kits/by-size" kind="quiet">
        Kit by size
      </ButtonLink>
    </div>
  </form>
);

const Buys: FC<{ model: FirstModel }> = ({ model: { buys, moreBuys, today } }) => (
  <section>
    <h2>What to buy</h2>
    {buys.length === 0 ? (
      <p>Nothing has to be bought for what is planned.</p>
    ) : (
      <ul class="sentences">
        {buys.map(({ name, unit, quantity, orderBy }) => (
          <li>
            <strong>{dayText(orderBy, today)}</strong>: {quantityText(quantity, unit)} {name}
          </li>
        ))}
      </ul>
    )}
    <p>
      <a href="/buying">{moreBuys > 0 ? `Buying, with ${moreBuys} more` : 'Buying'}</a>
    </p>
  </section>
);

const Risks: FC<{ model: FirstModel }> = ({ model: { risks, orderCount, today } }) => (
  <section>
    <h2>What is at risk</h2>
    {risks.length > 0 && (
      <ul class="sentences">
        <LongList items={risks} draw={(order) => <OrderSentence order={order} today={today} />} />
      </ul>
    )}
    {risks.length === 0 && orderCount > 0 && <p>No date given is at risk by today's plan.</p>}
    {orderCount === 0 && (
      <Empty>
        No order is open. Once one is <a href="/orders/new">taken</a>, it stands here whenever its date is at risk.
      </Empty>
    )}
    <p>
      <a href="/changes">What was changed, and which dates it moved</a>
    </p>
  </section>
);

interface StandingProps {
  model: FirstModel;
  /** A better plan is being looked for. */
  improving: boolean;
}

/** What stands below the question; while a better plan is being looked for it is looked at again. */
export const Standing: FC<StandingProps> = ({ model, improving }) => (
  <div
    id="standing"
    class="standing"
    {...(improving ? { 'hx-get': '/standing', 'hx-trigger': 'load delay:2s', 'hx-swap': 'outerHTML' } : {})}
  >
    <div class="side-by-side">
      <NextSession session={model.session} today={model.today} />
      <Buys model={model} />
    </div>
    <Risks model={model} />
  </div>
);

/** At the foot of the demo's first page: that it is one, and the way to a yard of one's own. */
const DemoNote: FC<{ model: FirstModel }> = ({ model: { yardName } }) => (
  <p class="demo-note">
    {yardName} is a made-up yard to look round in. <a href="/begin">Start your own</a>
  </p>
);

export const FirstPage: FC<StandingProps & { asked: AskedModel; notice: DoneNotice | null }> = ({
  model,
  asked,
  notice,
  improving,
}) => (
  <>
    {notice && <Notice notice={notice} today={model.today} back="/" />}
    <HeldNotices notices={model.notices} back="/" />
    {asked.offers.length === 0 ? (
      <>
        <Answer note="Once the yard has a kit, a panel or a part, you can ask here when it could be ready.">
          There is nothing to make yet.
        </Answer>
        <div class="buttons">
          <ButtonLink href="/begin/four" kind="main">
            Give four answers
          </ButtonLink>
          <ButtonLink href="/yard">Fill in your yard step by step</ButtonLink>
        </div>
      </>
    ) : (
      <div class="asking">
        <div id="ready" aria-live="polite">
          <ReadyPart asked={asked} today={model.today} />
        </div>
        <Question asked={asked} today={model.today} />
        <div id="sooner">
          <SoonerPart asked={asked} today={model.today} />
        </div>
      </div>
    )}
    <Standing model={model} improving={improving} />
    {model.demo && <DemoNote model={model} />}
  </>
);
