import type { FieldErrors } from '../parts/field.tsx';

/** A form that was sent back: which one, what was wrong, and what was typed into it. */
export interface RefusedForm {
  form: string;
  errors: FieldErrors;
  typed: Readonly<Record<string, string>>;
}
