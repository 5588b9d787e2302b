import { done, type Outcome, refuse } from '../core/context.ts';
import type { FormFields } from './form-fields.ts';

/** A UUID as RFC 9562 writes it, in small letters. */
const KEY = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/;

/** The key that a browser made for what it sends, to send it again under the same; null where it sends none. */
export const actTyped = ({ act }: FormFields): Outcome<string | null> => {
  if (act === undefined) return done(null);
  return KEY.test(act)
    ? done(act)
    : refuse(
        'act',
        'That came without a readable mark of its own. Nothing was changed. Load the page, and do it again.',
      );
};
