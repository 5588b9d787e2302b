import type { FC } from 'hono/jsx';
import type { RefusedForm } from '../../src/usecases/plan/save-edit.ts';
import type { FixedFacts } from '../../src/usecases/today/fixed-facts.ts';
import { Button } from '../parts/button.tsx';
import { dayText, dayWord } from '../parts/day-text.ts';
import { TextField, Wrong } from '../parts/field.tsx';
import { refusedAt, WorkForm } from './work-form.tsx';

/** "Saturday is fixed." */
export const fixedText = (date: string, today: string): string =>
  `${dayWord(date, today) ?? dayText(date, today)} is fixed.`;

interface FixedProps {
  fixed: FixedFacts;
  refused: RefusedForm | null;
}

const hoursText = (hours: number): string =>
  hours === 0
    ? 'A session is fixed once it begins'
    : `A session is fixed ${hours === 1 ? '1 hour' : `${hours} hours`} before it begins`;

/** From how long ahead sessions are fixed. */
const FixedHours: FC<FixedProps> = ({ fixed: { hours }, refused }) => {
  const mine = refusedAt(refused, 'fixed-hours');
  return (
    <WorkForm to="fixed-hours" class="field-row">
      <TextField
        name="hours"
        label="Hours before it begins"
        hint="0: only once it begins."
        width="short"
        value={mine?.typed.hours ?? hours}
        errors={mine?.errors ?? {}}
      />
      <Button>Change</Button>
    </WorkForm>
  );
};

/** That the session is fixed, the way to have it planned anew all the same, and from how long ahead sessions are fixed. */
export const FixedSession: FC<FixedProps & { today: string }> = ({ fixed, refused, today }) => {
  const { session, hours } = fixed;
  const wrong = refusedAt(refused, 'planned-anew')?.errors.session;
  const day = session && (dayWord(session.date, today) ?? dayText(session.date, today));
  return (
    <details
      class="message fixed-session no-print"
      open={wrong !== undefined || refusedAt(refused, 'fixed-hours') !== null}
    >
      <summary>{session ? fixedText(session.date, today) : hoursText(hours)}</summary>
      <Wrong message={wrong} name="session" />
      {session && (
        <>
          <p>Its mixes and pours stay as they are, whatever else changes, as long as they can be made.</p>
          <WorkForm to="planned-anew">
            <input type="hidden" name="session" value={session.start} />
            <Button>Replan {day === 'Today' ? 'today' : day}</Button>
          </WorkForm>
          <p>{hoursText(hours)}.</p>
        </>
      )}
      <FixedHours fixed={fixed} refused={refused} />
    </details>
  );
};
