import type { Child, FC } from 'hono/jsx';
import type { RefusedForm } from '../../src/usecases/plan/save-edit.ts';
import type { SessionStep } from '../../src/usecases/today/session-step.ts';
import type { TodayModel } from '../../src/usecases/today/today-model.ts';
import { LongList } from '../parts/long-list.tsx';
import { atHand, pastText, restText } from './at-hand.ts';
import { ServerClock, SettingClocks } from './clocks.tsx';
import { NotDone } from './late-work.tsx';
import { SessionStrip } from './session-strip.tsx';
import { StepView } from './step-view.tsx';
import { BegunStep } from './under-way.tsx';
import { isOfStep } from './work-form.tsx';

interface StepsProps {
  model: TodayModel;
  refused: RefusedForm | null;
}

interface FoldedProps {
  words: string | null;
  steps: readonly SessionStep[];
  refused: RefusedForm | null;
  line: (step: SessionStep) => Child;
  class?: string;
}

/** Steps behind one line; open where a form of theirs came back. */
const Folded: FC<FoldedProps> = ({ words, steps, refused, line, class: name = '' }) =>
  words === null ? null : (
    <details class={`message ${name}`} open={refused !== null && steps.some((step) => isOfStep(refused, step))}>
      <summary>{words}</summary>
      <ol class="steps">
        <LongList items={steps} draw={line} />
      </ol>
    </details>
  );

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
        <SettingClocks setting={model.setting} refused={refused} />
      </div>
      <Folded words={pastText(past)} steps={past} refused={refused} line={line} />
      <SessionStrip model={model} />
      <Folded words={restText(rest)} steps={rest} refused={refused} line={line} class="rest-of-session" />
    </>
  );
};

/** Steps of a session on another day: drawn, and folded. */
export const StepsToCome: FC<{ model: TodayModel }> = ({ model }) => (
  <>
    <SessionStrip model={model} />
    <details class="message">
      <summary>Step by step</summary>
      <p class="quiet">What is done can be marked here on the day.</p>
      <ol class="steps">
        <LongList
          items={model.steps}
          draw={(step: SessionStep) => (
            <StepView step={step} seen={model} writable={false} late={false} refused={null} due={false} />
          )}
        />
      </ol>
    </details>
  </>
);
