import type { FC } from 'hono/jsx';
import { described, Field, type FieldErrors } from '../parts/field.tsx';

/** Said where a password is chosen. */
export const PASSWORD_HINT = 'At least 12 letters. Four words that nobody would guess do well.';

interface PasswordProps {
  name?: string;
  label: string;
  /** "new-password" where one is chosen, for programs that keep passwords. */
  autocomplete: 'current-password' | 'new-password';
  hint?: string;
  errors: FieldErrors;
}

export const PasswordField: FC<PasswordProps> = ({ name = 'password', label, autocomplete, hint, errors }) => (
  <Field name={name} label={label} errors={errors} {...(hint ? { hint } : {})}>
    <input {...described(name, errors, hint)} type="password" autocomplete={autocomplete} required />
  </Field>
);
