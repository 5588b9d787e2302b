import type { Child, FC } from 'hono/jsx';
import type { RefusedForm } from '../../src/usecases/plan/save-edit.ts';
import type { SessionStep } from '../../src/usecases/today/session-step.ts';
import type { TodayModel } from '../../src/usecases/today/today-model.ts';
import { LongList } from '../parts/long-list.tsx';
import { atHand, pastText, restText } from './at-hand.ts';
import { ServerClock, SettingClocks } from './clocks.tsx';
import { NotDone } from './late-work.tsx';
import { isGoneOnIn, OtherPartsOfToday, stepsOfToday } from './part-of-today.tsx';
import { SessionStrip } from './session-strip.tsx';
import { StepView } from './step-view.tsx';
import { BegunStep } from './under-way.tsx';
import { isOfStep } from './work-form.tsx';

interface StepsProps {
  model: TodayModel;
  refused: RefusedForm | null;
}

interface FoldedProps extends StepsProps {
  /** What the address calls the list. */
  list: string;
  words: string | null;
  steps: readonly SessionStep[];
  line: (step: SessionStep) => Child;
  class?: string;
}

/** Steps behind one line; open where a form of theirs came back, or somebody went on in them. */
const Folded: FC<FoldedProps> = ({ list, words, model, steps, refused, line, class: name = '' }) => {
  if (words === null) return null;
  const isMine = (step: SessionStep) => refused !== null && isOfStep(refused, step);
  const part = stepsOfToday(model, steps, { list, isMine });
  return (
    <details id={list} class={`message ${name}`} open={isGoneOnIn(model, list) || steps.some(isMine)}>
      <summary>{words}</summary>
      <OtherPartsOfToday list={list} part={part} />
      <ol class="steps">
        <LongList items={part.items} draw={line} />
      </ol>
      <OtherPartsOfToday list={list} part={part} />
    </details>
  );
};

/** Steps of today: what is due first and large, the next two, the rest folded. */
export const StepsAtHand: FC<StepsProps> = ({ model, refused }) => {
  const { past, justOver, due, next, rest } = atHand(model);
  const line = (step: SessionStep) => {
    const begun = model.begun.find((one) => one.step === step);
    if (begun) return <BegunStep line={begun} model={model} refused={refused} due={step === due} />;
    return (
      <StepView step={step} seen={model} writable={true} late={false} refused={refused} due={step === due}>
        {model.overdue.includes(step.name) && <NotDone step={step} />}
      </StepView>
    );
  };
  return (
    <>
      <ServerClock model={model} />
      <div class="at-hand">
        <ol class="steps">
          {due && line(due)}
          {justOver && line(justOver)}
          {next.map(line)}
        </ol>
        <SettingClocks model={model} refused={refused} />
      </div>
      <Folded list="past" words={pastText(past)} steps={past} {...{ model, refused, line }} />
      <SessionStrip model={model} />
      <Folded list="rest" words={restText(rest)} steps={rest} class="rest-of-session" {...{ model, refused, line }} />
    </>
  );
};

/** Steps of a session on another day: drawn, and folded. */
export const StepsToCome: FC<{ model: TodayModel }> = ({ model }) => {
  const part = stepsOfToday(model, model.steps, { list: 'steps' });
  return (
    <>
      <SessionStrip model={model} />
      <details class="message" id="steps" open={isGoneOnIn(model, 'steps')}>
        <summary>Step by step</summary>
        <p class="quiet">What is done can be marked here on the day.</p>
        <OtherPartsOfToday list="steps" part={part} />
        <ol class="steps">
          <LongList
            items={part.items}
            draw={(step: SessionStep) => (
              <StepView step={step} seen={model} writable={false} late={false} refused={null} due={false} />
            )}
          />
        </ol>
        <OtherPartsOfToday list="steps" part={part} />
      </details>
    </>
  );
};
