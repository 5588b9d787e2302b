import { textsLongerThan } from '../../../db/stores/own-words-store.ts';
import type { Fault } from '../../../shared/fault.ts';
import { plainText, tooLongText } from '../../../shared/text-limits.ts';
import type { UseCaseContext } from '../core/context.ts';
import type { FormFields } from '../typed/form-fields.ts';
import { longTexts } from '../typed/text-limits.ts';

/**
 * Free texts of a form that are too long, each at its field. One that the yard has already, from before there was a limit or
 * from a file, is left as it is: a form that is saved for something else never asks to shorten it.
 */
export const textsTooLong = async ({ database }: UseCaseContext, fields: FormFields): Promise<Fault[]> => {
  const long = longTexts(fields);
  if (long.length === 0) return [];
  const held = new Set(
    (await database.read((tx) => textsLongerThan(tx, Math.min(...long.map(({ most }) => most))))).map(plainText),
  );
  return long
    .filter(({ text }) => !held.has(plainText(text)))
    .map(({ field, most }) => ({ path: field, message: tooLongText(most) }));
};
