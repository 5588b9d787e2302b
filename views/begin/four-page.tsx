import type { FC } from 'hono/jsx';
import { shortDayName } from '../../shared/day-names.ts';
import { WEEKDAYS } from '../../shared/time.ts';
import { Answer } from '../parts/answer.tsx';
import { Button, ButtonLink } from '../parts/button.tsx';
import { ChoiceField, FormErrors, TextField, Wrong } from '../parts/field.tsx';
import { WrittenFields } from '../parts/written-fields.tsx';
import { PutAway } from './begin-page.tsx';
import type { BeginProps } from './begin-props.ts';
import { BEGIN, FOUR } from './begin-text.ts';
import { NameFields } from './name-fields.tsx';

export interface FourProps extends BeginProps {
  /** Rows for lengths. */
  rows: number;
}

type Form = Pick<FourProps, 'errors' | 'typed'>;

const PanelRow: FC<Form & { row: number }> = ({ row, errors, typed }) => (
  <div class="field-row begin-row">
    <TextField
      name={`length${row}`}
      label={row === 0 ? 'Length' : 'And'}
      width="short"
      value={typed[`length${row}`] ?? ''}
      errors={errors}
    />
    <TextField
      name={`moulds${row}`}
      label="Moulds"
      type="number"
      min={1}
      max={60}
      width="short"
      value={typed[`moulds${row}`] ?? ''}
      errors={errors}
    />
  </div>
);

const Panels: FC<FourProps> = ({ rows, ...form }) => (
  <fieldset class="begin-answer">
    <legend>1. Which lengths do you cast, in how many moulds?</legend>
    <p class="hint">Write a length as you say it: 900, 1.2 m, 4 ft 6 in. Leave rows empty that you do not need.</p>
    {Array.from({ length: rows }, (_, row) => (
      <PanelRow row={row} {...form} />
    ))}
    <div class="buttons">
      <Button name="more" value={String(rows + 4)}>
        More lengths
      </Button>
    </div>
  </fieldset>
);

const Bag: FC<Form> = ({ errors, typed }) => (
  <fieldset class="begin-answer">
    <legend>2. What does one bag fill?</legend>
    <div class="field-row begin-row">
      <TextField name="bagPieces" label="Pieces" width="short" value={typed.bagPieces ?? ''} errors={errors} />
      <TextField name="bagLength" label="of length" width="short" value={typed.bagLength ?? ''} errors={errors} />
    </div>
    <p class="hint">
      One of the lengths above, such as two of 900. Halves count: 1 1/2. An empty length is the first one.
    </p>
  </fieldset>
);

const StripDay: FC<Form & { day: 'cold' | 'warm' }> = ({ day, errors, typed }) => (
  <div class="field-row begin-row">
    <TextField
      name={`${day}Celsius`}
      label={day === 'cold' ? 'On a cold day of' : 'On a warm day of'}
      width="short"
      value={typed[`${day}Celsius`]}
      errors={errors}
    />
    <TextField
      name={`${day}Minutes`}
      label="Minutes"
      type="number"
      min={1}
      width="short"
      value={typed[`${day}Minutes`]}
      errors={errors}
    />
  </div>
);

const SEASONS = [
  { value: 'cold', text: 'Like the cold day' },
  { value: 'between', text: 'In between' },
  { value: 'warm', text: 'Like the warm day' },
];

const Strip: FC<Form> = (form) => (
  <fieldset class="begin-answer">
    <legend>3. How long after pouring can a panel be stripped?</legend>
    <p class="hint">
      What stands here is a cautious guess for a fast-setting mortar. Your bag's data sheet comes first.
    </p>
    <StripDay day="cold" {...form} />
    <StripDay day="warm" {...form} />
    <ChoiceField
      name="season"
      label="What are the days like now?"
      value={form.typed.season}
      choices={SEASONS}
      errors={form.errors}
    />
  </fieldset>
);

const Hours: FC<Form & { row: number }> = ({ row, errors, typed }) => {
  const wrong = errors[`days${row}`];
  return (
    <div class="begin-hours">
      <fieldset class={`field choices${wrong ? ' wrong' : ''}`} id={`days${row}`}>
        <legend>{row === 0 ? 'Days' : 'And on other days, if any'}</legend>
        <div class="choice-row">
          {WEEKDAYS.map((day) => (
            <label class="choice">
              <input
                type="checkbox"
                name={`days${row}:${day}`}
                value="yes"
                checked={typed[`days${row}:${day}`] === 'yes'}
              />
              <span>{shortDayName(day)}</span>
            </label>
          ))}
        </div>
        <Wrong message={wrong} name={`days${row}`} at={`days${row}`} />
      </fieldset>
      <div class="field-row begin-row">
        <TextField
          name={`from${row}`}
          label="From"
          type="time"
          width="short"
          value={typed[`from${row}`]}
          errors={errors}
        />
        <TextField name={`to${row}`} label="To" type="time" width="short" value={typed[`to${row}`]} errors={errors} />
        <TextField
          name={`people${row}`}
          label="People"
          type="number"
          min={1}
          width="short"
          value={typed[`people${row}`]}
          errors={errors}
        />
      </div>
    </div>
  );
};

/** What may be said of handling, with what is taken where nothing is. */
const MINUTES = [
  { name: 'setUp', label: 'set up a mould', hint: 'Empty: 12 for a 900.' },
  { name: 'fill', label: 'fill a mould', hint: 'Empty: 7 for a 900.' },
  { name: 'clean', label: 'clean a mould', hint: 'Empty: 6.' },
  { name: 'strip', label: 'strip a panel', hint: 'Empty: 8.' },
  { name: 'mix', label: 'mix a bag', hint: 'Empty: 10.' },
  { name: 'working', label: 'work the mix', hint: 'Until it stiffens. Empty: 15.' },
];

const MinutesFields: FC<Form> = ({ errors, typed }) => (
  <fieldset class="field">
    <legend>Minutes to</legend>
    <div class="field-row begin-row">
      {MINUTES.map(({ name, label, hint }) => (
        <TextField
          name={name}
          label={label}
          hint={hint}
          type="number"
          min={0}
          width="short"
          value={typed[name] ?? ''}
          errors={errors}
        />
      ))}
    </div>
  </fieldset>
);

const MORE_FIELDS = [...MINUTES.map(({ name }) => name), 'height', 'thickness'];

const More: FC<Form> = ({ errors, typed }) => (
  <details class="message" open={MORE_FIELDS.some((name) => errors[name])}>
    <summary>More: size of a panel, minutes</summary>
    <div class="begin-more">
      <div class="field-row begin-row">
        <TextField name="height" label="Panel, high" width="short" value={typed.height} errors={errors} />
        <TextField name="thickness" label="Panel, thick" width="short" value={typed.thickness} errors={errors} />
      </div>
      <MinutesFields errors={errors} typed={typed} />
    </div>
  </details>
);

/** The four answers a yard begins with, on one page. */
export const FourPage: FC<FourProps> = (props) => {
  const { errors, typed, model } = props;
  return (
    <>
      <FormErrors errors={errors} />
      <Answer note="What you leave as it is counts as a figure to check, and a date that rests on one says so.">
        Four answers to a rough date.
      </Answer>
      <form class="form" method="post" action={FOUR}>
        {/* The first button of a form is what Enter presses. */}
        <button type="submit" class="unseen" tabindex={-1}>
          Begin this yard
        </button>
        <fieldset class="begin-answer">
          <legend>First: how do you measure and write?</legend>
          <WrittenFields system={typed.system} english={typed.english} errors={errors} />
          <p class="hint">A number without a unit is millimetres, or inches with the second.</p>
        </fieldset>
        <Panels {...props} />
        <Bag errors={errors} typed={typed} />
        <Strip errors={errors} typed={typed} />
        <fieldset class="begin-answer">
          <legend>4. When do you work?</legend>
          <Hours row={0} errors={errors} typed={typed} />
          <Hours row={1} errors={errors} typed={typed} />
        </fieldset>
        <fieldset class="begin-answer">
          <legend>The yard</legend>
          <NameFields {...props} />
        </fieldset>
        <More errors={errors} typed={typed} />
        <PutAway model={model} />
        <div class="buttons">
          <Button kind="main">Begin this yard</Button>
          <ButtonLink href={BEGIN} kind="quiet">
            Cancel
          </ButtonLink>
        </div>
      </form>
    </>
  );
};
