import type { FC } from 'hono/jsx';
import type { RefusedForm } from '../../src/usecases/plan/save-edit.ts';
import type { LateLine, TodayModel } from '../../src/usecases/today/today-model.ts';
import { StepView } from './step-view.tsx';
import { StepWord, ThrownAway } from './step-word.tsx';
import { refusedAt } from './work-form.tsx';

interface BegunStepProps {
  line: LateLine;
  model: TodayModel;
  refused: RefusedForm | null;
  /** It is what the page shows large. */
  due?: boolean;
}

/** A step that is under way, with what ends it but time: it is done, or was never begun. */
export const BegunStep: FC<BegunStepProps> = ({ line: { name, step }, model, refused, due = false }) => (
  <StepView
    id={name}
    step={step}
    seen={model}
    writable={true}
    late={false}
    begun
    due={due}
    refused={refused}
    wrong={(refusedAt(refused, 'not-done') ?? refusedAt(refused, 'thrown-away'))?.errors[name]}
  >
    <StepWord to="not-done" name={name} step={step} word="Not begun" />
    <ThrownAway name={name} step={step} />
  </StepView>
);

/** What is under way though its hours are no longer there: it goes on until it is over. */
export const UnderWay: FC<Omit<BegunStepProps, 'line' | 'due'>> = ({ model, refused }) => {
  const others = model.begun.filter(({ step }) => !model.steps.includes(step));
  return others.length === 0 ? null : (
    <section>
      <h2>Under way</h2>
      <ol class="steps">
        {others.map((line) => (
          <BegunStep line={line} model={model} refused={refused} />
        ))}
      </ol>
    </section>
  );
};
