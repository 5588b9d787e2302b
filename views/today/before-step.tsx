import type { FC } from 'hono/jsx';
import { listText } from '../../shared/list-text.ts';
import type { RefusedForm } from '../../src/usecases/plan/save-edit.ts';
import type { SessionStep } from '../../src/usecases/today/session-step.ts';
import type { WaitingFacts } from '../../src/usecases/today/today-model.ts';
import { Button } from '../parts/button.tsx';
import { fromClock } from '../parts/clock-text.ts';
import { Wrong } from '../parts/field.tsx';
import { stepText } from './today-text.ts';
import { Asked, isAsked, refusedAt, WorkForm } from './work-form.tsx';

interface BeforeProps {
  step: SessionStep;
  waiting: readonly WaitingFacts[];
  refused: RefusedForm | null;
}

const timed = (step: SessionStep): string => `${stepText(step)} (${fromClock(step.at)})`;

/** Whether a step is a batch of which a mould is not free yet. */
const isWaitingBatch = (step: SessionStep): boolean => step.kind === 'batch' && step.waits;

/**
 * What a step waits for: where all of that is over by the clock, one tap records it as it was planned, and the step can be
 * begun or recorded.
 */
export const Before: FC<BeforeProps> = ({ step, waiting, refused }) => {
  const found = waiting.find((one) => one.step === step.name);
  if (!found) return isWaitingBatch(step) ? <p class="quiet">It can be recorded once the turn before it is.</p> : null;
  const mine = refusedAt(refused, `before ${step.name}`);
  if (isAsked(mine)) return <Asked to="before-it" refused={mine} />;
  const words = listText(found.before.map(timed));
  return (
    <>
      <p class="quiet">Not recorded before it: {words}.</p>
      <WorkForm to="before-it">
        <input type="hidden" name="before" value={step.name} />
        <Wrong message={mine?.errors.before} name="before" />
        <Button label={`That was done as planned: ${words}`}>That was done as planned</Button>
      </WorkForm>
    </>
  );
};
