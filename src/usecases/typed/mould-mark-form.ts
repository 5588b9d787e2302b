import type { CameOut } from '../../../shared/piece-to-mend.ts';
import type { Outcome } from '../core/context.ts';
import type { DateReading } from './date-typed.ts';
import type { FormFields } from './form-fields.ts';
import { cameOutTyped } from './today-forms.ts';
import { TypedReader } from './typed-reader.ts';

/** How a mould stood when the form about it was shown: an empty text for none, nothing where the form does not say. */
export interface MouldWas {
  condition?: string | undefined;
  note?: string | undefined;
  repairedOn?: string | undefined;
}

interface MarkTyped {
  note: string;
  repairedOn: string | null;
  cameOut: CameOut | null;
  /** What stood in the form when its page was made, as far as it says so. */
  was: MouldWas;
}

/** What a mark on a mould comes with: a note, the day it is expected to be mended, and what the piece in it is. */
export const markTyped = (fields: FormFields, how: DateReading): Outcome<MarkTyped> => {
  const reader = new TypedReader(fields, how);
  const [note, repairedOn] = [reader.text('note'), reader.dateOrNone('repairedOn')];
  const was = { condition: fields.conditionWas, note: fields.noteWas, repairedOn: fields.repairedOnWas };
  return reader.outcome({ note, repairedOn, cameOut: cameOutTyped(fields), was });
};
