import type { FC } from 'hono/jsx';
import type { RefusedForm } from '../../src/usecases/plan/save-edit.ts';
import type { TodayModel } from '../../src/usecases/today/today-model.ts';
import { Button } from '../parts/button.tsx';
import { TextField } from '../parts/field.tsx';
import { AskedFirst, wrongIn } from './more-hours.tsx';
import { refusedAt } from './work-form.tsx';

const THERMOMETER = 'thermometer';

interface ThermometerProps {
  model: Pick<TodayModel, 'session' | 'today' | 'warmth'>;
  refused: RefusedForm | null;
}

/** "About 16 °C now, by the forecast", and the thermometer's word on it while something is still to be mixed. */
export const Thermometer: FC<ThermometerProps> = ({ model: { session, today, warmth }, refused }) => {
  if (!session || !warmth) return null;
  const mine = refusedAt(refused, THERMOMETER);
  const { expected, byTheHour } = warmth;
  const known = byTheHour ? `About ${expected} is expected now` : `Today is planned at ${expected}`;
  return (
    <details class="message no-print" open={mine !== null}>
      <summary>{expected === null ? 'How warm is it now?' : `${known}. How warm is it?`}</summary>
      <p class="hint">A warmer mix stiffens sooner. The rest of today is planned by what the thermometer says.</p>
      <AskedFirst to={THERMOMETER} anyway="It is that warm" session={session} today={today} refused={refused}>
        <TextField
          name="thermometer"
          label="The thermometer reads"
          width="short"
          value={mine?.typed.thermometer ?? ''}
          errors={wrongIn(refused, THERMOMETER)}
        />
        <Button>Plan by that</Button>
      </AskedFirst>
    </details>
  );
};
