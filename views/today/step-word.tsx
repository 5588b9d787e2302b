import type { FC } from 'hono/jsx';
import type { SessionStep } from '../../src/usecases/today/session-step.ts';
import { Button } from '../parts/button.tsx';
import { stepText } from './today-text.ts';
import { WorkForm } from './work-form.tsx';

interface StepWordProps {
  to: string;
  /** Names the step. */
  name: string | undefined;
  step: SessionStep;
  word: string;
}

/** The maker's word about a step that is late or under way, in one tap: that it was not done, or how it ended. */
export const StepWord: FC<StepWordProps> = ({ to, name, step, word }) => (
  <WorkForm to={to}>
    <input type="hidden" name="step" value={name} />
    <Button kind="quiet" label={`${word}: ${stepText(step)}`}>
      {word}
    </Button>
  </WorkForm>
);

/** A batch that went off before it was poured: its bags are gone, its moulds are still set up or to be cleaned. */
export const ThrownAway: FC<Pick<StepWordProps, 'name' | 'step'>> = ({ name, step }) =>
  step.kind !== 'batch' ? null : (
    <details class="not-good no-print">
      <summary aria-label={`Went off: ${stepText(step)}`}>Went off</summary>
      <p>A mix that stiffens is thrown away: water does not bring it back. Its bags are gone.</p>
      <WorkForm to="thrown-away">
        <input type="hidden" name="step" value={name} />
        <div class="buttons">
          <Button name="moulds" value="set up" label={`Thrown away. Nothing was in the moulds: ${stepText(step)}`}>
            Nothing was in the moulds
          </Button>
          <Button name="moulds" value="to clean" label={`Thrown away. Moulds are to be cleaned: ${stepText(step)}`}>
            Moulds are to be cleaned
          </Button>
        </div>
      </WorkForm>
    </details>
  );
