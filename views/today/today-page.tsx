import type { Child, FC } from 'hono/jsx';
import type { RefusedForm } from '../../src/usecases/plan/save-edit.ts';
import type { SessionStep } from '../../src/usecases/today/session-step.ts';
import type { TodayModel } from '../../src/usecases/today/today-model.ts';
import { Answer, Empty } from '../parts/answer.tsx';
import { Button, ButtonLink } from '../parts/button.tsx';
import { Caution } from '../parts/caution.tsx';
import { clockText, dayText } from '../parts/day-text.ts';
import { FormErrors } from '../parts/field.tsx';
import { LongList } from '../parts/long-list.tsx';
import { type DoneNotice, Notice } from '../parts/notice.tsx';
import { Amounts } from './amounts.tsx';
import { FixedHours, FixedSession } from './fixed-session.tsx';
import { HoursForms } from './hours-form.tsx';
import { LateWork, lateLead, NotDone } from './late-work.tsx';
import { OtherFull, OtherPour, Packed, PackedInPart } from './other-work.tsx';
import { StepView } from './step-view.tsx';
import { ToCome } from './to-come.tsx';
import { ToMend } from './to-mend.tsx';
import { ToBeMended, ToCount } from './to-settle.tsx';
import { belowAnswer, longPast, longPastText, todayAnswer, toHaveReady } from './today-text.ts';
import { BegunStep, UnderWay } from './under-way.tsx';
import { isOfStep } from './work-form.tsx';

interface TodayPageProps {
  model: TodayModel;
  notice: DoneNotice | null;
  refused: RefusedForm | null;
}

interface StepsProps {
  model: TodayModel;
  writable: boolean;
  refused: RefusedForm | null;
}

interface LongPastProps {
  past: readonly SessionStep[];
  refused: RefusedForm | null;
  line: (step: SessionStep) => Child;
}

/** Steps that are long over, behind one line. */
const LongPast: FC<LongPastProps> = ({ past, refused, line }) => {
  const words = longPastText(past);
  if (words === null) return null;
  return (
    <details class="message" open={refused !== null && past.some((step) => isOfStep(refused, step))}>
      <summary>{words}</summary>
      <ol class="steps">
        <LongList items={past} draw={line} />
      </ol>
    </details>
  );
};

/** The list of a session; while it is under way a line shows where the clock stands. */
const Steps: FC<StepsProps> = ({ model, writable, refused }) => {
  const { underWay, now } = model;
  const nowAt = underWay ? now : null;
  const past = longPast(model);
  const steps = model.steps.filter((step) => !past.includes(step));
  const passed = nowAt === null ? 0 : steps.filter(({ at }) => Date.parse(at) <= Date.parse(nowAt)).length;
  const line = (step: SessionStep) => {
    const begun = model.begun.find((one) => one.step === step);
    return begun ? (
      <BegunStep line={begun} model={model} refused={refused} />
    ) : (
      <StepView step={step} seen={model} writable={writable} late={false} refused={refused}>
        {writable && model.overdue.includes(step.name) && <NotDone step={step} />}
      </StepView>
    );
  };
  return (
    <>
      <LongPast past={past} refused={refused} line={line} />
      <ol class="steps">
        <LongList items={steps.slice(0, passed)} draw={line} />
        {nowAt && (
          <li class="now">
            <p>Now {clockText(nowAt)}</p>
          </li>
        )}
        <LongList items={steps.slice(passed)} draw={line} />
      </ol>
    </>
  );
};

const HaveReady: FC<{ steps: readonly SessionStep[] }> = ({ steps }) => {
  const amounts = toHaveReady(steps);
  if (amounts.length === 0) return null;
  return (
    <div>
      <p>To have at hand for all of it:</p>
      <Amounts amounts={amounts} />
    </div>
  );
};

const Session: FC<{ model: TodayModel; refused: RefusedForm | null }> = ({ model, refused }) => {
  const { session, steps, today } = model;
  if (!session)
    return model.late.length > 0 ? null : (
      <Empty>
        <a href="/orders/new">Take an order</a>, or record hours at <a href="/yard">Your yard</a>, and the next session
        shows here step by step.
      </Empty>
    );
  const writable = session.date === today;
  return (
    <section>
      <h2>{writable ? 'Step by step' : `Step by step, ${dayText(session.date, today)}`}</h2>
      <HaveReady steps={steps} />
      <Steps model={model} writable={writable} refused={refused} />
      {!writable && <p class="quiet">What is done can be marked here on the day.</p>}
    </section>
  );
};

const Done: FC<{ model: TodayModel }> = ({ model }) =>
  model.done.length === 0 ? null : (
    <section>
      <h2>Done today</h2>
      <ul class="done-list">
        {model.done.map(({ change, at, words }) => (
          <li>
            <p>
              {clockText(at)}: {words}.
            </p>
            <form method="post" action="/undo" hx-post="/undo" hx-target="#page">
              <input type="hidden" name="change" value={String(change)} />
              <input type="hidden" name="back" value="/today" />
              <Button label={`Undo: ${words}`}>Undo</Button>
            </form>
          </li>
        ))}
      </ul>
    </section>
  );

/** The session under way or the next one, as a list to work down. */
export const TodayPage: FC<TodayPageProps> = ({ model, notice, refused }) => (
  <>
    {notice && <Notice notice={notice} today={model.today} back="/today" />}
    <Answer note={belowAnswer(model)}>{todayAnswer(model)}</Answer>
    {refused && <FormErrors errors={refused.errors} lead={lateLead(refused) ?? 'That was not recorded.'} />}
    <ToCome model={model} />
    <ToBeMended model={model} refused={refused} />
    <ToCount model={model} refused={refused} />
    <UnderWay model={model} refused={refused} />
    {!model.underWay && <LateWork model={model} refused={refused} />}
    <Session model={model} refused={refused} />
    {model.underWay && <LateWork model={model} refused={refused} />}
    {model.session && (
      <p class="buttons">
        <ButtonLink href="/today/sheet" kind="quiet">
          A sheet for the wall, to print
        </ButtonLink>
      </p>
    )}
    <FixedSession fixed={model.fixed} refused={refused} today={model.today} />
    <OtherPour model={model} refused={refused} />
    <Done model={model} />
    <OtherFull model={model} refused={refused} />
    <ToMend model={model} refused={refused} />
    <PackedInPart model={model} />
    <Packed model={model} />
    <HoursForms model={model} refused={refused} />
    <FixedHours fixed={model.fixed} refused={refused} />
    {model.session && <Caution kinds={['dust', 'wet', 'lifting', 'pins', 'acid']} />}
  </>
);
