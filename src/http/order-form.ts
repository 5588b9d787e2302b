import type { Fault } from '../../shared/fault.ts';
import { SLIPS, type Slip } from '../../shared/order.ts';
import { lineOf } from '../usecases/orders/order-contents.ts';
import type { OrderDraft } from '../usecases/orders/order-draft.ts';
import type { OrderReading } from '../usecases/orders/show-order-form.ts';
import { amountTyped } from '../usecases/typed/amount-typed.ts';
import { type DateReading, readDate } from '../usecases/typed/date-typed.ts';
import type { Typed } from './form.ts';

const FIRST_ROWS = 2;
const MOST_ROWS = 30;

/** Rows the form shows: those it had, or as many as "More lines" asks for. */
export const rowsOf = (typed: Typed): number => {
  const filled = Object.keys(typed).flatMap((name) => /^what(\d{1,2})$/.exec(name)?.[1] ?? []);
  const asked = /^\d{1,2}$/.test(typed.more ?? '') ? Number(typed.more) : 0;
  return Math.min(MOST_ROWS, Math.max(FIRST_ROWS, asked, ...filled.map((row) => Number(row) + 1)));
};

/** How many of what a row names: a number, or an amount in any unit of a part that is measured. */
const quantityTyped = (typed: Typed, row: number, { keptIn, system }: OrderReading) => {
  const field = { text: typed[`quantity${row}`] ?? '', was: typed[`quantity${row}Was`] };
  return amountTyped(field, keptIn(typed[`what${row}`] ?? ''), system);
};

interface LinesRead {
  lines: OrderDraft['lines'];
  faults: Fault[];
}

/** The rows that name something. A row with a number and nothing named is a slip of the hand, and said so. */
export const linesTyped = (typed: Typed, how: OrderReading): LinesRead => {
  const read: { lines: OrderDraft['lines'][number][]; faults: Fault[] } = { lines: [], faults: [] };
  for (let row = 0; row < rowsOf(typed); row++) {
    const [what, text] = [typed[`what${row}`] ?? '', typed[`quantity${row}`] ?? ''];
    if (what === '') {
      if (text !== '')
        read.faults.push({ path: `what${row}`, message: `Choose what the ${text} is for, or empty it.` });
      continue;
    }
    const quantity = quantityTyped(typed, row, how);
    const line = quantity.ok && quantity.value !== null ? lineOf(what, quantity.value) : null;
    if (!quantity.ok) read.faults.push({ path: `quantity${row}`, message: quantity.reason });
    else if (quantity.value === null)
      read.faults.push({ path: `quantity${row}`, message: 'How many? Write a number.' });
    else if (!line) read.faults.push({ path: `what${row}`, message: 'Choose one from the list.' });
    else read.lines.push({ row, line });
  }
  return read;
};

/** A date field: null when empty, a fault when what is typed is no day, or one that does not exist. */
export const dateTyped = (typed: Typed, name: string, how: DateReading): { date: string | null; faults: Fault[] } => {
  const text = typed[name] ?? '';
  if (text === '') return { date: null, faults: [] };
  const read = readDate(text, how);
  return read.ok ? { date: read.date, faults: [] } : { date: null, faults: [{ path: name, message: read.reason }] };
};

const slipTyped = (typed: Typed): { slip: Slip; faults: Fault[] } => {
  const slip = SLIPS.find((one) => one === (typed.slip ?? 'rather not'));
  return slip
    ? { slip, faults: [] }
    : { slip: 'rather not', faults: [{ path: 'slip', message: 'Choose one of the three.' }] };
};

/** What was typed, read as an order. */
export const draftTyped = (typed: Typed, how: OrderReading): OrderDraft => {
  const { lines, faults } = linesTyped(typed, how);
  const [wanted, promised, held] = [
    dateTyped(typed, 'wantedOn', how),
    dateTyped(typed, 'promisedOn', how),
    dateTyped(typed, 'heldUntil', how),
  ];
  const { slip, faults: slipFaults } = slipTyped(typed);
  return {
    customer: typed.customer ?? '',
    phone: typed.phone ?? '',
    note: typed.note ?? '',
    wantedOn: wanted.date,
    promisedOn: promised.date,
    heldUntil: held.date,
    slip,
    lines,
    unread: [...faults, ...wanted.faults, ...promised.faults, ...held.faults, ...slipFaults],
  };
};
