import type { Context } from 'hono';
import type { Fault } from '../../shared/fault.ts';
import type { FormFields } from '../usecases/typed/form-fields.ts';

const LONGEST_VALUE = 4000;

/** What was sent, by field name, trimmed; the first value where a name came twice. */
export const readForm = async (c: Context): Promise<FormFields> => {
  const form = await c.req.formData().catch(() => new FormData());
  const typed: Record<string, string> = Object.create(null);
  for (const [name, value] of form.entries())
    if (typeof value === 'string' && !Object.hasOwn(typed, name)) typed[name] = value.trim().slice(0, LONGEST_VALUE);
  return typed;
};

/** Faults by the name of their field, the first of each. */
export const errorsByField = (faults: readonly Fault[]): Record<string, string> => {
  const errors: Record<string, string> = {};
  for (const fault of faults) errors[fault.path] ??= fault.message;
  return errors;
};
