import { type AmountTyped, amountIn } from './amount-typed.ts';
import type { FormFields } from './form-fields.ts';

/** Bags of one date that were counted, as they were typed: which, by the date on them and by when they were opened; empty for neither. */
export interface BagsCounted {
  field: string;
  useBy: string;
  openedAt: string;
  counted: AmountTyped;
}

/** The fields of bags beside a field for all of a material (`…Bags0` and so on), as far as they are filled in. */
export const bagsCounted = (fields: FormFields, of: string): BagsCounted[] =>
  Object.keys(fields).flatMap((key) => {
    const row = new RegExp(`^${of}Bags(\\d{1,3})$`).exec(key)?.[1];
    const counted = amountIn(fields, key);
    if (row === undefined || counted.text === '') return [];
    return [
      { field: `Bags${row}`, useBy: fields[`${key}UseBy`] ?? '', openedAt: fields[`${key}OpenedAt`] ?? '', counted },
    ];
  });
