import type { FC } from 'hono/jsx';
import type { RefusedForm } from '../../src/usecases/plan/save-edit.ts';
import type { SlipModel } from '../../src/usecases/today/slip-answers.ts';
import type { TodayModel } from '../../src/usecases/today/today-model.ts';
import { ThisDevice } from '../device/this-device.tsx';
import { Answer, Empty } from '../parts/answer.tsx';
import { Button, ButtonLink } from '../parts/button.tsx';
import { byText } from '../parts/by-text.ts';
import { Caution } from '../parts/caution.tsx';
import { clockText, dayText } from '../parts/day-text.ts';
import { FormErrors } from '../parts/field.tsx';
import { type DoneNotice, Notice } from '../parts/notice.tsx';
import { Amounts, Lines } from './amounts.tsx';
import { EveningCard } from './evening-card.tsx';
import { FixedSession } from './fixed-session.tsx';
import { HardOtherwise } from './hard-otherwise.tsx';
import { HoursForms } from './hours-form.tsx';
import { LateWork, lateLead } from './late-work.tsx';
import { OtherFull, OtherPour, Packed, PackedInPart } from './other-work.tsx';
import { isGoneOnIn, OtherPartsOfToday, partOfToday } from './part-of-today.tsx';
import { Rain } from './rain.tsx';
import { RunningLate } from './running-late.tsx';
import { slipLines } from './slip-text.ts';
import { StepsAtHand, StepsToCome } from './steps.tsx';
import { Thermometer } from './thermometer.tsx';
import { ToCome } from './to-come.tsx';
import { ToMend } from './to-mend.tsx';
import { NotArrived, ToBeMended, ToCount } from './to-settle.tsx';
import { belowAnswer, sparesTodayText, todayAnswer, toHaveReady } from './today-text.ts';
import { UnderWay } from './under-way.tsx';
import { WetCures } from './wet-cures.tsx';

interface TodayPageProps {
  model: TodayModel;
  notice: DoneNotice | null;
  refused: RefusedForm | null;
  /** A slip that was asked about, with what is known of it. */
  slip?: SlipModel | null;
  /** The name chosen on this device. */
  who: string | null;
}

/** Each recipe once, and all that goes into the mixes of the session. */
const Recipes: FC<{ model: TodayModel }> = ({ model: { steps, recipes } }) => {
  const amounts = toHaveReady(steps);
  if (amounts.length === 0) return null;
  return (
    <details class="message">
      <summary>Recipe, and what to have at hand</summary>
      {recipes.map(({ mix, perBag }) => (
        <div>
          <p>{mix}, per bag:</p>
          <Lines lines={slipLines(perBag)} />
        </div>
      ))}
      <div>
        <p>To have at hand for all of it:</p>
        <Amounts amounts={amounts} />
      </div>
    </details>
  );
};

/** What is due now stands right below the first line; what else there is to know of the session comes after it. */
const hasCard = ({ session, today }: TodayModel): boolean => session?.date === today;

const Session: FC<Omit<TodayPageProps, 'notice' | 'who'>> = ({ model, refused, slip = null }) => {
  const { session, today } = model;
  if (!session)
    return model.late.length > 0 ? null : (
      <Empty>
        <a href="/orders/new">Take an order</a>, or record hours at <a href="/yard">Your yard</a>, and the next session
        shows here step by step.
      </Empty>
    );
  const writable = hasCard(model);
  return (
    <section class="session">
      <h2 class="unseen">{writable ? 'Step by step' : `Step by step, ${dayText(session.date, today)}`}</h2>
      {writable ? <StepsAtHand model={model} refused={refused} /> : <StepsToCome model={model} />}
      {hasCard(model) && <p class="quiet">{belowAnswer(model)}</p>}
      <Thermometer model={model} refused={refused} />
      {model.spares.length > 0 && <p class="quiet">{sparesTodayText(model.spares)}</p>}
      <Recipes model={model} />
      <RunningLate model={model} refused={refused} slip={slip} />
    </section>
  );
};

const DONE_SHOWN = 30;

/** What was recorded today, the last of it first where it is too much for the page. */
const Done: FC<{ model: TodayModel }> = ({ model }) => {
  const isShort = model.done.length <= DONE_SHOWN;
  const part = partOfToday(model, isShort ? model.done : model.done.toReversed(), { list: 'done', most: DONE_SHOWN });
  return model.done.length === 0 ? null : (
    <details class="message done-today" id="done" open={isGoneOnIn(model, 'done')}>
      <summary>Done today</summary>
      <ul class="done-list">
        {part.items.map(({ change, at, words, by }) => (
          <li>
            <p>
              {clockText(at)}: {byText(by)}
              {words}.
            </p>
            <form method="post" action="/undo" data-hx-post="/undo" data-hx-target="#page">
              <input type="hidden" name="change" value={String(change)} />
              <input type="hidden" name="back" value="/today" />
              <Button label={`Undo: ${words}`}>Undo</Button>
            </form>
          </li>
        ))}
      </ul>
      <OtherPartsOfToday list="done" part={part} what="record" />
    </details>
  );
};

/** The session under way or the next one, as a list to work down. */
export const TodayPage: FC<TodayPageProps> = ({ model, notice, refused, slip, who }) => (
  <>
    {notice && <Notice notice={notice} today={model.today} back="/today" />}
    <Answer note={hasCard(model) ? undefined : belowAnswer(model)}>{todayAnswer(model)}</Answer>
    {refused && <FormErrors errors={refused.errors} lead={lateLead(refused) ?? 'That was not recorded.'} />}
    <ToCome model={model} />
    <ToBeMended model={model} refused={refused} />
    <NotArrived model={model} refused={refused} />
    <ToCount model={model} refused={refused} />
    <Rain model={model} refused={refused} />
    <UnderWay model={model} refused={refused} />
    {!hasCard(model) && <EveningCard model={model} refused={refused} />}
    {!model.underWay && <LateWork model={model} refused={refused} />}
    <Session model={model} refused={refused} slip={slip} />
    {model.underWay && <LateWork model={model} refused={refused} />}
    {hasCard(model) && <EveningCard model={model} refused={refused} />}
    <HardOtherwise model={model} />
    <WetCures model={model} />
    <ToMend model={model} refused={refused} />
    <PackedInPart model={model} />
    <Packed model={model} />
    <div class="folds">
      <OtherFull model={model} refused={refused} />
      <OtherPour model={model} refused={refused} />
      <Done model={model} />
      <HoursForms model={model} refused={refused} />
      <FixedSession fixed={model.fixed} refused={refused} today={model.today} />
      {model.session && (
        <p class="buttons">
          <ButtonLink href="/today/sheet" kind="quiet">
            A sheet for the wall, to print
          </ButtonLink>
        </p>
      )}
      {model.session && (
        <details class="message no-print">
          <summary>What work in the yard can hurt</summary>
          <Caution kinds={['dust', 'wet', 'lifting', 'pins', 'acid']} />
        </details>
      )}
      <ThisDevice who={who} back="/today" />
    </div>
  </>
);
