import type { FC } from 'hono/jsx';
import type { RefusedForm } from '../../src/usecases/plan/save-edit.ts';
import type { LateLine, TodayModel } from '../../src/usecases/today/today-model.ts';
import { Button } from '../parts/button.tsx';
import { LongList } from '../parts/long-list.tsx';
import { StepView } from './step-view.tsx';
import { lateNote, stepText } from './today-text.ts';
import { refusedAt, WorkForm, Wrong } from './work-form.tsx';

interface LateWorkProps {
  model: TodayModel;
  refused: RefusedForm | null;
}

/** The forms about more than one line of late work. */
const AS_PLANNED = 'as-planned';
const NOT_DONE = 'not-done';

/** Where all of it could not be written down, what is said at the top of the page. */
export const lateLead = (refused: RefusedForm): string | null =>
  refused.form === AS_PLANNED ? 'None of it was written down.' : null;

const wrongWith = (refused: RefusedForm | null, field: string): string | undefined =>
  (refusedAt(refused, AS_PLANNED) ?? refusedAt(refused, NOT_DONE))?.errors[field];

const Line: FC<{ line: LateLine } & LateWorkProps> = ({ line: { name, step }, model, refused }) => (
  <StepView id={name} step={step} clock={model} writable={true} late refused={refused} wrong={wrongWith(refused, name)}>
    <WorkForm to={NOT_DONE}>
      <input type="hidden" name="step" value={name} />
      <Button kind="quiet" label={`Not done: ${stepText(step)}`}>
        Not done
      </Button>
    </WorkForm>
  </StepView>
);

/** What was planned for a session that is over and is not written down yet: all as planned with one tap, or one by one. */
export const LateWork: FC<LateWorkProps> = ({ model, refused }) =>
  model.late && (
    <section id="late">
      <h2>Not written down yet</h2>
      <p class="quiet">{lateNote(model.late)}</p>
      <Wrong message={wrongWith(refused, 'late')} />
      <WorkForm to={AS_PLANNED}>
        <Button kind="main">All as planned</Button>
      </WorkForm>
      <ol class="steps">
        <LongList
          items={model.late.lines}
          draw={(line: LateLine) => <Line line={line} model={model} refused={refused} />}
        />
      </ol>
      {model.late.lines.length > 1 && (
        <WorkForm to={NOT_DONE}>
          <Button>None of it was done</Button>
        </WorkForm>
      )}
    </section>
  );
