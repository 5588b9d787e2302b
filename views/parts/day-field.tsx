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

/**
 * A day, typed in any of the usual ways or chosen in the browser's own calendar, which fills the text in. It is the text
 * alone; script puts the calendar beside it (`screen.js`), and the page says at once how the text was read.
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
          data-min={min}
          placeholder="8 May"
          data-hx-get={`/day?of=${field.name}`}
          data-hx-trigger="change"
          data-hx-target={`#${id}-read`}
        />
      </div>
      <p class="day-read hint" id={`${id}-read`} aria-live="polite" />
    </Field>
  );
};
