import type { CameOut } from '../../../shared/piece-to-mend.ts';
import type { Outcome } from '../core/context.ts';
import type { DateReading } from './date-typed.ts';
import type { FormFields } from './form-fields.ts';
import { cameOutTyped } from './today-forms.ts';
import { TypedReader } from './typed-reader.ts';

interface MarkTyped {
  note: string;
  repairedOn: string | null;
  cameOut: CameOut | null;
}

/** What a mark on a mould comes with: a note, the day it is expected to be mended, and what the piece in it is. */
export const markTyped = (fields: FormFields, how: DateReading): Outcome<MarkTyped> => {
  const reader = new TypedReader(fields, how);
  const [note, repairedOn] = [reader.text('note'), reader.dateOrNone('repairedOn')];
  return reader.outcome({ note, repairedOn, cameOut: cameOutTyped(fields) });
};
