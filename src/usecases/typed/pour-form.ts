import { quoted } from '../../../shared/said-back.ts';
import type { BatchTold } from '../../engine/book/work-done.ts';
import type { Outcome } from '../core/context.ts';
import { toldTyped } from './batch-form.ts';
import type { DateReading } from './date-typed.ts';
import type { FormFields } from './form-fields.ts';
import { TypedReader } from './typed-reader.ts';
import { type RecordTyped, recordTyped } from './when-form.ts';

/** More moulds than one batch ever fills, and than a form of Today has rows. */
const MOST_ROWS = 200;

/** "2", "2.5" or "2,5". Three figures after a comma might be thousands, so they are no number. */
const AMOUNT = /^\d{1,7}(\.\d{1,6}|,\d{1,2})?$/;

/** How many bags were mixed; null where the field is empty: as many as the pieces need. */
const bagsTyped = (reader: TypedReader): number | null => {
  const text = reader.text('bags');
  if (text === '') return null;
  if (AMOUNT.test(text)) return Number(text.replace(',', '.'));
  reader.refuse('bags', `${quoted(text)} is no number. Write it like 12 or 2.5.`);
  return null;
};

interface FilledRow {
  mould: string;
  casting: string;
  order: string | null;
  sealed: boolean;
}

/** The ticked rows of a form: which mould was filled, with what, for whom. */
const filledRows = (reader: TypedReader): FilledRow[] =>
  Array.from({ length: MOST_ROWS }, (_, row) => row)
    .filter((row) => reader.text(`filled${row}`) === 'yes')
    .map((row) => ({
      mould: reader.text(`mould${row}`),
      casting: reader.text(`casting${row}`),
      order: reader.text(`order${row}`) || reader.text('order') || null,
      sealed: reader.text(`sealed${row}`) === 'yes',
    }));

/** A batch as it was filled into its moulds; `filledAt` is null for just now. */
interface PourTyped extends Omit<RecordTyped, 'at'> {
  pours: FilledRow[];
  /** For whom all of it is said to be, in a field of its own. */
  whom: string | null;
  bags: number | null;
  filledAt: string | null;
  /** What was not by the recipe, was read off the bag or measured. */
  told: BatchTold;
}

/** "Poured" on Today: of a step of the plan, or of another pour. */
export const pourTyped = (fields: FormFields, how: DateReading): Outcome<PourTyped> => {
  const reader = new TypedReader(fields, how);
  const pours = filledRows(reader);
  if (pours.length === 0) reader.refuse('pours', 'Tick what was poured.');
  const { at: filledAt, ...recorded } = recordTyped(reader, fields);
  const whom = reader.text('order') || null;
  return reader.outcome({ pours, whom, bags: bagsTyped(reader), filledAt, told: toldTyped(reader, how), ...recorded });
};
