import type { Child, FC } from 'hono/jsx';

/** What was wrong with a form, by the name of the field. */
export type FieldErrors = Readonly<Record<string, string | undefined>>;

const hintId = (id: string) => `${id}-hint`;
const errorId = (id: string) => `${id}-error`;

interface WrongProps {
  message: string | undefined;
  /** The name of the field, or of what was wrong where it has none. */
  name: string;
  /** The id of what it is about; left out where that is nothing but these words. */
  at?: string;
  id?: string;
}

/** What was wrong, where it is. The list on top of the page leads to `at` (src/http/lead-to-faults.ts). */
export const Wrong: FC<WrongProps> = ({ message, name, id = `wrong-${name}`, at = id }) =>
  message ? (
    <p class="error" data-fault={name} data-at={at} id={id}>
      {message}
    </p>
  ) : null;

interface FieldProps {
  name: string;
  /** The name again, unless a page has several fields of that name. */
  id?: string;
  label: string;
  hint?: string;
  errors?: FieldErrors;
  /** Nobody has confirmed the figure in it yet. */
  guess?: boolean;
  /** Wide enough for a date or a number, a line of words, or all there is. */
  width?: 'short' | 'line' | 'full';
  children?: Child;
}

/** Beside the name of a figure that nobody has confirmed. */
const GuessMark: FC = () => <span class="guess"> to check</span>;

/** A label, its hint, what was wrong, and the control (with id = name and `{...described(name, ...)}`). */
export const Field: FC<FieldProps> = ({
  name,
  id = name,
  label,
  hint,
  errors = {},
  guess,
  width = 'line',
  children,
}) => (
  <div class={`field ${width}${errors[name] ? ' wrong' : ''}`}>
    <label for={id}>
      {label}
      {guess && <GuessMark />}
    </label>
    {hint && (
      <p class="hint" id={hintId(id)}>
        {hint}
      </p>
    )}
    {children}
    <Wrong message={errors[name]} name={name} id={errorId(id)} at={id} />
  </div>
);

/** The attributes that tie a control to its hint and to what was wrong with it. */
export const described = (name: string, errors: FieldErrors = {}, hint?: string, id = name) => ({
  id,
  name,
  'aria-invalid': errors[name] ? 'true' : undefined,
  'aria-describedby': [hint && hintId(id), errors[name] && errorId(id)].filter(Boolean).join(' ') || undefined,
});

/** The same for a group of answers. Its hint and what was wrong with it are read out as the group is entered. */
const describedGroup = ({
  name,
  id = name,
  hint,
  errors = {},
}: Pick<FieldProps, 'name' | 'id' | 'hint' | 'errors'>) => ({
  id,
  class: `field choices${errors[name] ? ' wrong' : ''}`,
  'aria-describedby': described(name, errors, hint, id)['aria-describedby'],
});

const GroupHint: FC<Pick<FieldProps, 'name' | 'id' | 'hint'>> = ({ name, id = name, hint }) =>
  hint ? (
    <p class="hint" id={hintId(id)}>
      {hint}
    </p>
  ) : null;

const GroupError: FC<Pick<FieldProps, 'name' | 'id' | 'errors'>> = ({ name, id = name, errors = {} }) => (
  <Wrong message={errors[name]} name={name} id={errorId(id)} at={id} />
);

interface TextFieldProps extends Omit<FieldProps, 'children'> {
  value?: string | number;
  type?: 'text' | 'number' | 'date' | 'tel' | 'time';
  min?: number | string;
  max?: number | string;
  step?: number | string;
  /** Names offered while typing: the id of a datalist. */
  list?: string;
  required?: boolean;
}

export const TextField: FC<TextFieldProps> = ({ value, type = 'text', min, max, step, list, required, ...field }) => (
  <Field {...field}>
    <input
      {...described(field.name, field.errors, field.hint, field.id)}
      type={type}
      value={value === undefined ? undefined : String(value)}
      min={min}
      max={max}
      step={step}
      list={list}
      required={required}
      autocomplete="off"
      inputmode={type === 'number' ? 'numeric' : undefined}
    />
  </Field>
);

interface SelectFieldProps extends Omit<FieldProps, 'children'> {
  value?: string;
  options: readonly { value: string; text: string; group?: string }[];
}

/** Options with the same `group` next to each other stand under its heading. */
export const SelectField: FC<SelectFieldProps> = ({ value, options, ...field }) => {
  const groups = [...new Set(options.map((option) => option.group))];
  const optionsOf = (group: string | undefined) =>
    options
      .filter((option) => option.group === group)
      .map((option) => (
        <option value={option.value} selected={option.value === value}>
          {option.text}
        </option>
      ));
  return (
    <Field {...field}>
      <select {...described(field.name, field.errors, field.hint, field.id)}>
        {groups.map((group) => (group ? <optgroup label={group}>{optionsOf(group)}</optgroup> : optionsOf(group)))}
      </select>
    </Field>
  );
};

interface TickFieldProps extends Omit<FieldProps, 'children' | 'width' | 'name'> {
  /** Names the group, for its fault. */
  name: string;
  /** Each a field of its own: `name:value`. */
  ticks: readonly { value: string; text: string; ticked: boolean }[];
}

/** Any number of answers side by side. Each is sent as a field `name:value`, so that none is lost. */
export const TickField: FC<TickFieldProps> = ({ label, ticks, ...group }) => (
  <fieldset {...describedGroup(group)}>
    <legend>{label}</legend>
    <GroupHint {...group} />
    <div class="choice-row">
      {ticks.map(({ value, text, ticked }) => (
        <label class="choice">
          <input type="checkbox" name={`${group.name}:${value}`} value="yes" checked={ticked} />
          <span>{text}</span>
        </label>
      ))}
    </div>
    <GroupError {...group} />
  </fieldset>
);

interface ChoiceFieldProps extends Omit<FieldProps, 'children' | 'width'> {
  value?: string;
  choices: readonly { value: string; text: string }[];
}

/** A few answers side by side, all in sight. */
export const ChoiceField: FC<ChoiceFieldProps> = ({ label, value, choices, ...group }) => (
  <fieldset {...describedGroup(group)}>
    <legend>{label}</legend>
    <GroupHint {...group} />
    <div class="choice-row">
      {choices.map((choice) => (
        <label class="choice">
          <input type="radio" name={group.name} value={choice.value} checked={choice.value === value} />
          <span>{choice.text}</span>
        </label>
      ))}
    </div>
    <GroupError {...group} />
  </fieldset>
);

const UNCHANGED = 'Nothing was changed.';

/** On top of a form that was sent back: what happened and what was kept. Each line leads to where that is, if it is there. */
export const FormErrors: FC<{ errors: FieldErrors; lead?: string }> = ({
  errors,
  lead = 'Nothing has been saved yet. Everything you typed is still here.',
}) => {
  const named = Object.entries(errors).filter(([, message]) => message);
  if (named.length === 0) return null;
  // The line above has said it.
  const said = (message = ''): string => (lead.startsWith(UNCHANGED) ? message.replace(` ${UNCHANGED}`, '') : message);
  return (
    <div class="warning form-errors" role="alert" tabindex={-1}>
      <p class="warning-lead">{lead}</p>
      <ul>
        {named.map(([name, message]) => (
          <li>
            <a data-leads-to={name} href={`#${name}`}>
              {said(message)}
            </a>
          </li>
        ))}
      </ul>
    </div>
  );
};
