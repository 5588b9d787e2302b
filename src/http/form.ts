import type { Context } from 'hono';
import type { Fault } from '../../shared/fault.ts';

/** What was typed, by field name, trimmed; the first value where a name came twice. */
export type Typed = Readonly<Record<string, string>>;

const LONGEST_VALUE = 4000;

export const readForm = async (c: Context): Promise<Typed> => {
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

/** A whole number typed into a field, or null when it is none. "1 000" and "1,5" are none. */
export const wholeTyped = (text: string | undefined): number | null =>
  text !== undefined && /^\d{1,9}$/.test(text) ? Number(text) : null;
