import { LONGEST_PART } from '../../../shared/mould-part.ts';
import { LONGEST_NAME, LONGEST_NOTE, LONGEST_UNIT, lettersOf } from '../../../shared/text-limits.ts';
import type { FormFields } from './form-fields.ts';

/** Fields of free text in any form, and how many letters each may have. All other fields are read as something and refused as that. */
const LIMITS: Readonly<Record<string, number>> = {
  ...{ name: LONGEST_NAME, customer: LONGEST_NAME, phone: LONGEST_NAME, supplier: LONGEST_NAME, by: LONGEST_NAME },
  ...{ id: LONGEST_NAME, kind: LONGEST_NAME, bagName: LONGEST_NAME, payNote: LONGEST_NAME, program: LONGEST_NAME },
  ...{ unit: LONGEST_UNIT, part: LONGEST_PART, otherPart: LONGEST_PART },
  ...{ note: LONGEST_NOTE, address: LONGEST_NOTE, partNote: LONGEST_NOTE, reason: LONGEST_NOTE },
};

/** How many letters a field may have; null where it is no free text. */
export const mostLetters = (field: string): number | null => (Object.hasOwn(LIMITS, field) ? LIMITS[field]! : null);

/** Free texts of a form that are longer than they may be, with how many letters are the most. */
export const longTexts = (fields: FormFields): { field: string; text: string; most: number }[] =>
  Object.entries(fields).flatMap(([field, text]) => {
    const most = mostLetters(field);
    return most !== null && lettersOf(text) > most ? [{ field, text, most }] : [];
  });
