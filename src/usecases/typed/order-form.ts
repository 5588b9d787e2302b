import type { Fault } from '../../../shared/fault.ts';
import { type OrderLine, SLIPS, type Slip } from '../../../shared/order.ts';
import { done, type Outcome } from '../core/context.ts';
import { amountIn, amountTyped } from './amount-typed.ts';
import type { DateReading } from './date-typed.ts';
import { type FormFields, rowsTyped } from './form-fields.ts';
import { type DaysShown, daysShown } from './meanwhile.ts';
import { TypedReader } from './typed-reader.ts';
import { lineOf } from './what-ordered.ts';

/** Days of an order as they were typed. */
export interface DaysTyped {
  promisedOn: string | null;
  heldUntil: string | null;
  /** By field: the same day to come, where the one typed has just gone by and names no year. */
  next: Readonly<Record<string, string>>;
}

/** An order as it was typed, before it has a number. */
export interface OrderDraft extends DaysTyped {
  customer: string;
  phone: string;
  note: string;
  address: string;
  wantedOn: string | null;
  /** Nothing is poured for it before that day. */
  notBefore: string | null;
  slip: Slip;
  /** The row of the form each line was typed in, so that a fault is shown there. */
  lines: readonly { row: number; line: OrderLine }[];
  /** What was typed and could not be read: said together with everything else that is wrong. */
  unread: readonly Fault[];
  /** What the form was filled in from, where the order was there already. */
  version?: string;
}

/** What an order that is typed is read by: days, and what amounts of a part are kept in. */
export interface OrderReading extends DateReading {
  /** "" for what is counted. */
  keptIn: (what: string) => string;
}

/** Rows the form shows: those it had, or as many as "More lines" asks for. */
export const orderRows = (fields: FormFields): number => rowsTyped(fields, 'what', { first: 2, most: 30 });

interface LinesRead {
  lines: OrderDraft['lines'];
  faults: Fault[];
}

/** One row that names something: how many of it, or an amount in any unit of a part that is measured. */
const lineTyped = (fields: FormFields, row: number, { keptIn, system }: OrderReading): OrderLine | Fault => {
  const [what, field] = [fields[`what${row}`] ?? '', `quantity${row}`];
  const quantity = amountTyped(amountIn(fields, field), keptIn(what), system);
  if (!quantity.ok) return { path: field, message: quantity.reason };
  if (quantity.value === null) return { path: field, message: 'How many? Write a number.' };
  return lineOf(what, quantity.value) ?? { path: `what${row}`, message: 'Choose one from the list.' };
};

/** The rows that name something. A row with a number and nothing named is a slip of the hand, and said so. */
export const linesTyped = (fields: FormFields, how: OrderReading): LinesRead => {
  const read: { lines: OrderDraft['lines'][number][]; faults: Fault[] } = { lines: [], faults: [] };
  for (let row = 0; row < orderRows(fields); row++) {
    const [what, text] = [fields[`what${row}`] ?? '', fields[`quantity${row}`] ?? ''];
    if (what !== '') {
      const line = lineTyped(fields, row, how);
      if ('message' in line) read.faults.push(line);
      else read.lines.push({ row, line });
    } else if (text !== '')
      read.faults.push({ path: `what${row}`, message: `Choose what the ${text} is for, or empty it.` });
  }
  return read;
};

const slipTyped = (reader: TypedReader, fields: FormFields): Slip =>
  fields.slip === undefined ? 'rather not' : reader.choice('slip', SLIPS, 'Choose one of the three.');

/** The form of an order, new or changed. What could not be read is in `unread`. */
export const orderTyped = (fields: FormFields, how: OrderReading): OrderDraft => {
  const { lines, faults } = linesTyped(fields, how);
  const reader = new TypedReader(fields, how);
  return {
    ...(fields.version ? { version: fields.version } : {}),
    customer: reader.text('customer'),
    phone: reader.text('phone'),
    note: reader.text('note'),
    address: reader.text('address'),
    wantedOn: reader.dateOrNone('wantedOn'),
    notBefore: reader.dateOrNone('notBefore'),
    promisedOn: reader.dateOrNone('promisedOn'),
    heldUntil: reader.dateOrNone('heldUntil'),
    next: reader.next,
    slip: slipTyped(reader, fields),
    lines,
    unread: [...faults, ...reader.faults],
  };
};

/** Days of an order that are given on its page, and what stood there when the page was made. */
export interface DaysGiven extends DaysTyped {
  shown?: DaysShown;
}

const GIVEN = ['promisedOn', 'heldUntil'];

/** The date that is promised for good on an order's page; null where none was typed. */
export const promiseTyped = (fields: FormFields, how: DateReading): Outcome<DaysGiven> => {
  const reader = new TypedReader(fields, how);
  const promisedOn = reader.dateOrNone('promisedOn');
  return reader.outcome({ promisedOn, heldUntil: null, next: reader.next, shown: daysShown(fields, GIVEN) });
};

/** The date that is held on an order's page, and until when. */
export const holdTyped = (fields: FormFields, how: DateReading): Outcome<DaysGiven> => {
  const reader = new TypedReader(fields, how);
  const [promisedOn, heldUntil] = [reader.dateOrNone('promisedOn'), reader.dateOrNone('heldUntil')];
  return reader.outcome({ promisedOn, heldUntil, next: reader.next, shown: daysShown(fields, GIVEN) });
};

/** Whether an order is handed over even though pieces are missing. */
export const handOverTyped = ({ evenShort }: FormFields): Outcome<{ evenShort: boolean }> =>
  done({ evenShort: evenShort === 'yes' });

/** The question of the first page, as far as it could be read. */
export const questionTyped = (fields: FormFields, how: DateReading) => {
  const reader = new TypedReader(fields, how);
  const wantedOn = reader.dateOrNone('wantedOn');
  return { wantedOn: reader.faults.length > 0 ? null : wantedOn, faults: reader.faults };
};
