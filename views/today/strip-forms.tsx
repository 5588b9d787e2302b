import type { FC } from 'hono/jsx';
import type { RefusedForm } from '../../src/usecases/plan/save-edit.ts';
import { Button } from '../parts/button.tsx';
import { TextField } from '../parts/field.tsx';
import { refusedAt, WorkForm, Wrong } from './work-form.tsx';

interface StripFormsProps {
  mould: string;
  /** When a good one was stripped, where that is not just now. */
  at?: string | null;
  refused: RefusedForm | null;
}

/** A piece that came out and is not good: lost, or to be patched, and what is wrong with it for who likes to say. */
const NotGood: FC<StripFormsProps> = ({ mould, refused }) => {
  const typed = refusedAt(refused, `strip ${mould}`)?.typed;
  const isMine = typed !== undefined && typed.cameOut !== 'good';
  return (
    <details class="not-good no-print" open={isMine}>
      <summary aria-label={`Not good: ${mould}`}>Not good</summary>
      <WorkForm to="stripped" class="form">
        <input type="hidden" name="mould" value={mould} />
        <TextField
          name="reason"
          id={`reason-${encodeURIComponent(mould)}`}
          label="What is wrong"
          hint="If you like: crack, honeycomb, corner broken off."
          value={isMine ? typed.reason : ''}
        />
        <div class="buttons">
          <Button name="cameOut" value="mend" label={`Stripped, to mend: ${mould}`}>
            To mend
          </Button>
          <Button name="cameOut" value="scrap" label={`Stripped, scrap: ${mould}`}>
            Scrap
          </Button>
        </div>
      </WorkForm>
    </details>
  );
};

/** The ways a piece can come out of its mould: good is one tap, anything else is asked about. */
export const StripForms: FC<StripFormsProps> = ({ mould, at, refused }) => (
  <div class="strip-forms">
    <WorkForm to="stripped">
      <input type="hidden" name="mould" value={mould} />
      {at && <input type="hidden" name="at" value={at} />}
      <Wrong message={refusedAt(refused, `strip ${mould}`)?.errors.mould} id="mould" />
      <Button name="cameOut" value="good" label={`Stripped: ${mould}`}>
        Stripped
      </Button>
    </WorkForm>
    <NotGood mould={mould} refused={refused} />
  </div>
);
