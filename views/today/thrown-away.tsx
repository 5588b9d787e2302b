import type { FC } from 'hono/jsx';
import type { SessionStep } from '../../src/usecases/today/session-step.ts';
import { Button } from '../parts/button.tsx';
import { stepText } from './today-text.ts';
import { WorkForm } from './work-form.tsx';

/** A batch that went off before it was poured: its bags are gone, its moulds are to be cleaned. */
export const ThrownAway: FC<{ name: string; step: SessionStep }> = ({ name, step }) =>
  step.kind === 'batch' ? (
    <WorkForm to="thrown-away">
      <input type="hidden" name="step" value={name} />
      <Button kind="quiet" label={`Thrown away: ${stepText(step)}`}>
        Thrown away
      </Button>
    </WorkForm>
  ) : null;
