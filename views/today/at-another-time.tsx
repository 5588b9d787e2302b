import type { Child, FC } from 'hono/jsx';
import { fullDayWords } from '../../shared/day-words.ts';
import type { RefusedForm } from '../../src/usecases/plan/save-edit.ts';
import { Button } from '../parts/button.tsx';
import { DayField } from '../parts/day-field.tsx';
import { TextField } from '../parts/field.tsx';
import { WorkForm } from './work-form.tsx';

/** What may stand in the id of a field, of any name. */
export const slug = (name: string): string => name.replaceAll(/[^\w-]/g, '-');

interface DayAndTimeProps {
  /** Names the form on the page: one mould may have several steps. */
  id: string;
  /** "Full at". */
  label: string;
  hint?: string;
  /** An instant that stands in the fields; null: they are empty. */
  planned: string | null;
  /** Both may be left empty, for just now: the hint says so. */
  orNow?: boolean;
  refused: RefusedForm | null;
}

/** A day and a time at which something was done. */
export const DayAndTime: FC<DayAndTimeProps> = ({ id, label, hint, planned, orNow = false, refused }) => {
  const { typed = {}, errors = {} } = refused ?? {};
  const when = orNow ? 'typed or now' : 'typed';
  const isMine = typed.when === when;
  const time = errors.time ?? errors.at ?? errors.filledAt;
  return (
    <>
      <input type="hidden" name="when" value={when} />
      <DayField
        name="on"
        id={`on-${slug(id)}`}
        label="Day"
        value={isMine ? typed.on : planned ? fullDayWords(planned.slice(0, 10)) : ''}
        {...(isMine ? { errors } : {})}
      />
      <TextField
        name="time"
        id={`time-${slug(id)}`}
        label={label}
        type="time"
        width="short"
        value={(isMine ? typed.time : planned?.slice(11, 16)) ?? ''}
        {...(hint ? { hint } : {})}
        {...(isMine && time ? { errors: { time } } : {})}
      />
    </>
  );
};

interface AtAnotherTimeProps extends Omit<DayAndTimeProps, 'hint' | 'orNow'> {
  to: string;
  /** "Poured" */
  done: string;
  /** What that was done to. */
  of: string;
  /** What else can be told there: "or for another time". */
  also?: string;
  /** Fields of the form. */
  children?: Child;
}

/** Done at another time than just now, or than planned: opens a form with a day and a time. */
export const AtAnotherTime: FC<AtAnotherTimeProps> = ({ to, done, of, also = '', children, ...when }) => (
  <details class="not-good no-print" open={when.refused?.typed.when === 'typed'}>
    <summary aria-label={`${done} at another time${also}: ${of}`}>At another time{also}</summary>
    <WorkForm to={to} class="form">
      {children}
      <div class="field-row">
        <DayAndTime {...when} />
      </div>
      <Button label={`${done} then: ${of}`}>{done} then</Button>
    </WorkForm>
  </details>
);
