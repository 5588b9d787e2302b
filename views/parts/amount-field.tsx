import type { FC } from 'hono/jsx';
import { described, Field, type FieldErrors } from './field.tsx';

interface AmountFieldProps {
  name: string;
  id?: string;
  label: string;
  hint?: string;
  errors?: FieldErrors;
  value: string;
  /** Exactly what the value stands for where the page filled it in: left as it is, that is what is meant. */
  was?: number | string | undefined;
  /** A count has digits only; a measure may come with its unit. */
  counts?: boolean;
}

/** A field for an amount or a price. It is no number field: "2 lb" and "1 1/2" can be typed too. */
export const AmountField: FC<AmountFieldProps> = ({ value, was, counts = false, ...field }) => (
  <Field {...field} width="short">
    {was !== undefined && <input type="hidden" name={`${field.name}Was`} value={String(was)} />}
    <input
      {...described(field.name, field.errors, field.hint, field.id)}
      class="amount"
      type="text"
      inputmode={counts ? 'decimal' : undefined}
      value={value}
      autocomplete="off"
    />
  </Field>
);

/** Units that measure something are named beside the label: "How much (oz)". Things counted by the piece need none. */
export const unitHint = (unit: string): string => (unit === 'each' || unit === '' ? '' : ` (${unit})`);
