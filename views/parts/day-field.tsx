import type { FC } from 'hono/jsx';
import { fullDayWords } from '../../shared/day-words.ts';
import type { DateRead } from '../../src/usecases/typed/date-typed.ts';
import { described, Field, type FieldErrors } from './field.tsx';

interface DayFieldProps {
  name: string;
  id?: string;
  label: string;
  hint?: string;
  errors?: FieldErrors;
  /** As it was typed, or as `fullDayWords` writes it. */
  value?: string | undefined;
  /** The first day that the calendar offers. */
  min?: string;
}

/** How a day was read that is written otherwise than the page would; nothing for one that could not be otherwise. */
export const DayRead: FC<{ typed: string; read: DateRead | null }> = ({ typed, read }) => {
  if (read === null) return null;
  if (!read.ok) return <span class="error">{read.reason}</span>;
  const day = fullDayWords(read.date);
  if (day === typed.trim()) return null;
  return (
    <>
      That is {day}
      {read.order && `, with the ${read.order.replace(' first', '')} first`}.
      {read.next && ` It has gone by. The next one is ${fullDayWords(read.next)}.`}
    </>
  );
};

const Calendar: FC = () => (
  <svg viewBox="0 0 20 20" width="20" height="20" aria-hidden="true" focusable="false">
    <path d="M3 5h14v12H3zM3 9h14M7 3v4M13 3v4" fill="none" stroke="currentColor" stroke-width="1.5" />
  </svg>
);

/**
 * A day, typed in any of the usual ways or chosen in the browser's own calendar, which fills the text in. Without script it
 * is the text alone; with it, the page says at once how the text was read.
 */
export const DayField: FC<DayFieldProps> = ({ value, min, ...field }) => {
  const id = field.id ?? field.name;
  return (
    <Field {...field} width="short">
      <div class="day-field">
        <input
          {...described(field.name, field.errors, field.hint, id)}
          class="day"
          type="text"
          value={value}
          autocomplete="off"
          placeholder="8 May"
          data-hx-get={`/day?of=${field.name}`}
          data-hx-trigger="change"
          data-hx-target={`#${id}-read`}
        />
        <button type="button" class="button plain" data-calendar={id} aria-label={`${field.label}: calendar`} hidden>
          <Calendar />
        </button>
        <input
          type="date"
          class="day-picker unseen"
          id={`${id}-picker`}
          aria-label={`${field.label}, chosen in the calendar`}
          min={min}
          tabindex={-1}
          hidden
        />
      </div>
      <p class="day-read hint" id={`${id}-read`} aria-live="polite" />
    </Field>
  );
};
