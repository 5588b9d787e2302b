import type { FC } from 'hono/jsx';
import type { RefusedForm } from '../../src/usecases/plan/save-edit.ts';
import type { SessionStep } from '../../src/usecases/today/session-step.ts';
import type { LateLine, TodayModel } from '../../src/usecases/today/today-model.ts';
import { Button } from '../parts/button.tsx';
import { StepView } from './step-view.tsx';
import { ThrownAway } from './thrown-away.tsx';
import { stepText } from './today-text.ts';
import { refusedAt, WorkForm } from './work-form.tsx';

interface BegunStepProps {
  line: LateLine;
  model: TodayModel;
  refused: RefusedForm | null;
}

/** The maker's word that a step which counts as under way is not. */
const NotBegun: FC<{ name: string; step: SessionStep }> = ({ name, step }) => (
  <WorkForm to="not-done">
    <input type="hidden" name="step" value={name} />
    <Button kind="quiet" label={`Not begun: ${stepText(step)}`}>
      Not begun
    </Button>
  </WorkForm>
);

/** A step that is under way, with what ends it but time: it is done, or was never begun. */
export const BegunStep: FC<BegunStepProps> = ({ line: { name, step }, model, refused }) => (
  <StepView
    id={name}
    step={step}
    clock={model}
    writable={true}
    late={false}
    begun
    refused={refused}
    wrong={(refusedAt(refused, 'not-done') ?? refusedAt(refused, 'thrown-away'))?.errors[name]}
  >
    <NotBegun name={name} step={step} />
    <ThrownAway name={name} step={step} />
  </StepView>
);

/** What is under way though its hours are no longer there: it goes on until it is over. */
export const UnderWay: FC<Omit<BegunStepProps, 'line'>> = ({ model, refused }) => {
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
