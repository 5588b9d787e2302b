/** What was sent by a form, by the name of its field, trimmed. A box that is not ticked is not in it. */
export type FormFields = Readonly<Record<string, string>>;

/** A whole number typed into a field, or null when it is none. "1 000" and "1,5" are none. */
export const wholeTyped = (text: string | undefined): number | null =>
  text !== undefined && /^\d{1,9}$/.test(text) ? Number(text) : null;

/**
 * How many rows a form shows: the first few, those it was sent with, or as many as "More lines" asks for.
 *
 * Example: `rowsTyped({ what0: 'kit:trough', what4: '' }, 'what', { first: 2, most: 30 })` is 5.
 */
export const rowsTyped = (
  fields: FormFields,
  name: string,
  { first, most }: { first: number; most: number },
): number => {
  const row = new RegExp(`^${name}(\\d{1,2})$`);
  const sent = Object.keys(fields).flatMap((field) => row.exec(field)?.[1] ?? []);
  const asked = /^\d{1,2}$/.test(fields.more ?? '') ? Number(fields.more) : 0;
  return Math.min(most, Math.max(first, asked, ...sent.map((text) => Number(text) + 1)));
};
