import type { FormFields } from '../usecases/typed/form-fields.ts';

/** A mark for a form that is drawn just now: the field `once` of it. */
export const onceMark = (): string => crypto.randomUUID();

/** The form of a UUID, with the digits of a hash: RFC 9562, 5.8. */
const asUuid = (hex: string): string =>
  [hex.slice(0, 8), hex.slice(8, 12), `8${hex.slice(13, 16)}`, `8${hex.slice(17, 20)}`, hex.slice(20, 32)].join('-');

/**
 * The key of what a form says: the same only for the same form, drawn once, saying the same in every field. Sent twice it is
 * one act; with another customer in it, as by going back in the browser, it is another.
 */
export const keyOf = async (fields: FormFields): Promise<string> => {
  const said = JSON.stringify(Object.entries(fields).sort(([a], [b]) => (a < b ? -1 : 1)));
  const hash = await crypto.subtle.digest('SHA-256', new TextEncoder().encode(said));
  return asUuid([...new Uint8Array(hash)].map((byte) => byte.toString(16).padStart(2, '0')).join(''));
};
