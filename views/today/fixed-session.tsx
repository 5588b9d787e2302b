import type { FC } from 'hono/jsx';
import type { FixedFacts } from '../../src/usecases/fixed-facts.ts';
import { Button } from '../parts/button.tsx';
import { dayText, dayWord } from '../parts/day-text.ts';
import { TextField } from '../parts/field.tsx';

/** "Saturday is fixed." */
export const fixedText = (date: string, today: string): string =>
  `${dayWord(date, today) ?? dayText(date, today)} is fixed.`;

/** That the session is fixed, and the way to have it planned anew all the same. */
export const FixedSession: FC<{ fixed: FixedFacts; today: string }> = ({ fixed: { session }, today }) => {
  if (!session) return null;
  const day = dayWord(session.date, today) ?? dayText(session.date, today);
  return (
    <div class="fixed-session no-print">
      <p>
        <strong>{fixedText(session.date, today)}</strong> Its mixes and pours stay as they are, whatever else changes,
        as long as they can be made.
      </p>
      <form method="post" action="/fixed/anew" hx-post="/fixed/anew" hx-target="#page">
        <input type="hidden" name="session" value={session.start} />
        <Button>Plan {day === 'Today' ? 'today' : day} anew</Button>
      </form>
    </div>
  );
};

/** From how long ahead sessions are fixed. */
export const FixedHours: FC<{ fixed: FixedFacts }> = ({ fixed: { hours } }) => (
  <details class="message no-print">
    <summary>
      {hours === 0
        ? 'A session is fixed once it begins'
        : `A session is fixed ${hours === 1 ? '1 hour' : `${hours} hours`} before it begins`}
    </summary>
    <form class="field-row" method="post" action="/fixed/hours" hx-post="/fixed/hours" hx-target="#page">
      <TextField
        name="hours"
        label="Hours before it begins"
        hint="0: only once it begins."
        type="number"
        width="short"
        min={0}
        max={336}
        value={hours}
      />
      <Button>Change</Button>
    </form>
  </details>
);
