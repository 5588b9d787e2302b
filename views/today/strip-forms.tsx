import type { FC } from 'hono/jsx';
import type { RefusedForm } from '../../src/usecases/plan/save-edit.ts';
import { Button, ButtonLink } from '../parts/button.tsx';
import { TextField, Wrong } from '../parts/field.tsx';
import { piecePath } from '../trace/piece-path.ts';
import { AtAnotherTime } from './at-another-time.tsx';
import { Asked, isAsked, refusedAt, WorkForm } from './work-form.tsx';

interface StripFormsProps {
  mould: string;
  /** The name of the piece. */
  pieceKey: string;
  /** When a good one was stripped, where that is not just now. */
  at?: string | null;
  now: string;
  /** It is to be out by the plan, and may not be hard yet. */
  due?: boolean;
  refused: RefusedForm | null;
}

/** `minuteOfPiece('piece 30162785 900 no. 1')` is 30162785: when its mould was full. */
const minuteOfPiece = (pieceKey: string): number => Number(pieceKey.split(' ')[1]);

/** A piece that came out and is not good: lost, or to be patched, and what is wrong with it for who likes to say. */
const NotGood: FC<StripFormsProps> = ({ mould, pieceKey, refused }) => {
  const { typed, errors = {} } = refusedAt(refused, `strip ${mould}`) ?? {};
  const isMine = typed !== undefined && typed.cameOut !== 'good';
  return (
    <details class="not-good no-print" open={isMine}>
      <summary aria-label={`Not good: ${mould}`}>Not good</summary>
      <WorkForm to="stripped" class="form">
        <input type="hidden" name="mould" value={mould} />
        <input type="hidden" name="step" value={pieceKey} />
        <TextField
          name="reason"
          id={`reason-${encodeURIComponent(mould)}`}
          label="What is wrong"
          hint="If you like: crack, honeycomb, corner broken off."
          value={isMine ? typed.reason : ''}
          errors={isMine ? errors : {}}
        />
        <div class="buttons">
          <Button name="cameOut" value="mend" label={`Stripped, to mend: ${mould}`}>
            To mend
          </Button>
          <Button name="cameOut" value="scrap" label={`Stripped, scrap: ${mould}`}>
            Scrap
          </Button>
          <ButtonLink href={piecePath({ minute: minuteOfPiece(pieceKey), mould })} kind="quiet">
            Photo of it
          </ButtonLink>
        </div>
      </WorkForm>
    </details>
  );
};

/** Not hard by its time: looked at again in a while, and all that waits for it waits. */
const NotHardYet: FC<Pick<StripFormsProps, 'mould' | 'refused'>> = ({ mould, refused }) => (
  <WorkForm to="not-hard">
    <input type="hidden" name="mould" value={mould} />
    <Wrong message={refusedAt(refused, `not hard ${mould}`)?.errors.mould} name="mould" />
    <Button kind="quiet" label={`Not hard yet, look again in 15 min: ${mould}`}>
      Not hard yet, look again in 15 min
    </Button>
  </WorkForm>
);

/** The ways a piece can come out of its mould: good is one tap, anything else is asked about. */
export const StripForms: FC<StripFormsProps> = ({ mould, pieceKey, at = null, now, due = false, refused }) => {
  const mine = refusedAt(refused, `strip ${mould}`);
  if (isAsked(mine)) return <Asked to="stripped" refused={mine} />;
  return (
    <div class="strip-forms">
      <WorkForm to="stripped">
        <input type="hidden" name="mould" value={mould} />
        <input type="hidden" name="step" value={pieceKey} />
        {at && <input type="hidden" name="at" value={at} />}
        <Wrong message={mine?.errors.mould ?? (mine?.typed.when ? undefined : mine?.errors.at)} name="mould" />
        <Button name="cameOut" value="good" label={`Stripped: ${mould}`}>
          Stripped
        </Button>
      </WorkForm>
      {due && <NotHardYet mould={mould} refused={refused} />}
      <NotGood mould={mould} pieceKey={pieceKey} at={at} now={now} refused={refused} />
      <AtAnotherTime
        id={pieceKey}
        to="stripped"
        done="Stripped"
        of={mould}
        label="Stripped at"
        planned={at ?? now}
        refused={mine}
      >
        <input type="hidden" name="mould" value={mould} />
        <input type="hidden" name="step" value={pieceKey} />
        <input type="hidden" name="cameOut" value="good" />
      </AtAnotherTime>
    </div>
  );
};
