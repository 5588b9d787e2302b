import { MOULD_SEEN, type MouldSeen } from '../../engine/book/see-mould.ts';
import { done, type Outcome } from '../core/context.ts';
import { type AmountTyped, amountIn } from './amount-typed.ts';
import { type BagsCounted, bagsCounted } from './bags-counted.ts';
import type { FormFields } from './form-fields.ts';

/** One thing that was looked at: the name of its field, what it is, and how the book had it when the form was shown. */
interface Looked {
  field: string;
  id: string;
  was: string;
}

/** A walk round as it was typed. What nobody looked at is not in it. */
export interface WalkTyped {
  moulds: readonly (Looked & { seen: MouldSeen })[];
  pieces: readonly (Looked & { counted: string })[];
  /** `offcuts` null: nobody looked at them. */
  stock: readonly (Looked & { counted: AmountTyped; offcuts: string | null; bags: readonly BagsCounted[] })[];
}

/** The fields of one kind: so many rows, each with what it is of (`…Id`) and how the book had it (`…Was`). */
const lookedAt = (fields: FormFields, name: string): Looked[] =>
  Object.keys(fields).flatMap((key) => {
    const row = new RegExp(`^${name}(\\d{1,4})Id$`).exec(key)?.[1];
    if (row === undefined) return [];
    const field = `${name}${row}`;
    return [{ field, id: fields[key] ?? '', was: fields[`${field}Book`] ?? '' }];
  });

/** That there are none is said with a nought or a word: an empty field was not looked at. */
const noneTyped = (text: string): string => (/^(0|no|none)$/i.test(text) ? '' : text);

/** A walk round, to be read once the yard is known. Nothing in it is refused by itself. */
export const walkTyped = (fields: FormFields): Outcome<WalkTyped> =>
  done({
    moulds: lookedAt(fields, 'mould').flatMap((one) => {
      const seen = MOULD_SEEN.find((word) => word === fields[one.field]);
      return seen ? [{ ...one, seen }] : [];
    }),
    pieces: lookedAt(fields, 'pieces').flatMap((one) => {
      const counted = fields[one.field] ?? '';
      return counted === '' ? [] : [{ ...one, counted }];
    }),
    stock: lookedAt(fields, 'stock').flatMap((one) => {
      const [counted, offcuts] = [amountIn(fields, one.field), fields[`${one.field}Offcuts`] ?? ''];
      const bags = bagsCounted(fields, one.field);
      if (counted.text === '' && offcuts === '' && bags.length === 0) return [];
      return [{ ...one, counted, bags, offcuts: offcuts === '' ? null : noneTyped(offcuts) }];
    }),
  });
