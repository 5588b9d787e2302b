import type { Context } from 'hono';
import type { Fault } from '../../shared/fault.ts';
import type { FormFields } from '../usecases/typed/form-fields.ts';

/** A note that is far too long is still given back whole, to be made shorter. */
const LONGEST_VALUE = 20_000;

/** The button that answers a question about a day with another one. */
const ANOTHER_DAY = 'another-day';

/** Another day in place of what was typed in one field: "promisedOn 2028-04-07". */
const answered = ({ [ANOTHER_DAY]: answer = '', ...typed }: Record<string, string>): FormFields => {
  const [, field, day] = /^([a-zA-Z]+) (\d{4}-\d{2}-\d{2})$/.exec(answer) ?? [];
  if (field !== undefined && day !== undefined && Object.hasOwn(typed, field)) typed[field] = day;
  return typed;
};

/**
 * What was sent, by field name, trimmed; the first value where a name came twice. A button called `another-day` puts
 * the day that it names in the place of what stands in one field.
 */
export const readForm = async (c: Context): Promise<FormFields> => {
  const form = await c.req.formData().catch(() => new FormData());
  const typed: Record<string, string> = Object.create(null);
  for (const [name, value] of form.entries())
    if (typeof value === 'string' && !Object.hasOwn(typed, name)) typed[name] = value.trim().slice(0, LONGEST_VALUE);
  return Object.hasOwn(typed, ANOTHER_DAY) ? answered(typed) : typed;
};

/** Faults by the name of their field, the first of each. */
export const errorsByField = (faults: readonly Fault[]): Record<string, string> => {
  const errors: Record<string, string> = {};
  for (const fault of faults) errors[fault.path] ??= fault.message;
  return errors;
};
