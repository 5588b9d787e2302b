import type { FC } from 'hono/jsx';
import { countText } from '../../shared/plural.ts';
import type { RefusedForm } from '../../src/usecases/plan/save-edit.ts';
import type { SessionHours } from '../../src/usecases/today/hours-facts.ts';
import type { TodayModel } from '../../src/usecases/today/today-model.ts';
import { Button } from '../parts/button.tsx';
import { hoursText } from '../parts/clock-text.ts';
import { dayText } from '../parts/day-text.ts';
import { ChoiceField, TextField, Wrong } from '../parts/field.tsx';

import { AnotherHour, OnePersonMore } from './more-hours.tsx';
import { refusedAt, WorkForm } from './work-form.tsx';

/** There is no work on the day of a session after all. */
export const NoWork: FC<{ session: SessionHours; today: string; refused: RefusedForm | null }> = ({
  session,
  today,
  refused,
}) => {
  const words = session.date === today ? 'No work today' : `No work on ${dayText(session.date, today)}`;
  return (
    <WorkForm to="no-work">
      <input type="hidden" name="date" value={session.date} />
      <Wrong message={refusedAt(refused, 'no-work')?.errors.date} name="date" />
      <Button>{words}</Button>
    </WorkForm>
  );
};

const StopAt: FC<{ session: SessionHours; refused: RefusedForm | null }> = ({ session, refused }) => {
  const { errors = {}, typed = {} } = refusedAt(refused, 'stop-at') ?? {};
  return (
    <WorkForm to="stop-at" class="field-row">
      <input type="hidden" name="session" value={session.start} />
      <TextField
        name="at"
        id="stop-at"
        label="Stop at"
        type="time"
        width="short"
        value={typed.at ?? ''}
        errors={{ at: errors.at ?? errors.session }}
      />
      <Button>Stop then</Button>
    </WorkForm>
  );
};

/** The helper's hours are the shorter ones, so they are the first guess. */
const shortest = ({ windows }: SessionHours): number => {
  const length = ({ start, end }: SessionHours['windows'][number]) => Date.parse(end) - Date.parse(start);
  return windows.reduce((best, window, index) => (length(window) <= length(windows[best]!) ? index : best), 0);
};

const OnePersonFewer: FC<{ session: SessionHours; refused: RefusedForm | null }> = ({ session, refused }) => {
  const { errors = {}, typed = {} } = refusedAt(refused, 'one-fewer') ?? {};
  if (session.windows.reduce((sum, { crew }) => sum + crew, 0) < 2) return null;
  const choices = session.windows.map((window, index) => ({
    value: String(index),
    text: `${hoursText(window)}${window.crew > 1 ? `, ${countText(window.crew, 'person', 'people')}` : ''}`,
  }));
  return (
    <WorkForm to="one-fewer" class="field-row">
      <input type="hidden" name="session" value={session.start} />
      {choices.length > 1 ? (
        <ChoiceField
          name="window"
          label="Who can't come?"
          value={typed.window ?? String(shortest(session))}
          choices={choices}
          errors={{ window: errors.window ?? errors.session }}
        />
      ) : (
        <>
          <input type="hidden" name="window" value="0" />
          <Wrong message={errors.window ?? errors.session} name="window" />
        </>
      )}
      <Button>One person fewer</Button>
    </WorkForm>
  );
};

const HOURS_FORMS = ['no-work', 'stop-at', 'one-fewer', 'another-hour', 'one-more'];

/** The hours of the session shown, when they are not as usual; and what was changed, each with its undo. */
export const HoursForms: FC<{ model: TodayModel; refused: RefusedForm | null }> = ({ model, refused }) => {
  const { session, today, hoursChanged } = model;
  if (!session && hoursChanged.length === 0) return null;
  const isMine = HOURS_FORMS.some((form) => refused?.form === form);
  return (
    <details class="hours message no-print" open={isMine || hoursChanged.length > 0}>
      <summary>When the hours are not as usual</summary>
      {hoursChanged.length > 0 && (
        <ul class="done-list">
          {hoursChanged.map(({ change, words }) => (
            <li>
              <p>{words}.</p>
              <form method="post" action="/undo" data-hx-post="/undo" data-hx-target="#page">
                <input type="hidden" name="change" value={String(change)} />
                <input type="hidden" name="back" value="/today" />
                <Button label={`Undo: ${words}`}>Undo</Button>
              </form>
            </li>
          ))}
        </ul>
      )}
      {session && (
        <div class="hours-forms">
          <NoWork session={session} today={today} refused={refused} />
          <StopAt session={session} refused={refused} />
          <OnePersonFewer session={session} refused={refused} />
          <AnotherHour session={session} today={today} refused={refused} />
          <OnePersonMore session={session} today={today} refused={refused} />
        </div>
      )}
    </details>
  );
};
