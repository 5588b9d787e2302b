import { isDate } from '../../../shared/time.ts';
import { type Outcome, refuse } from '../core/context.ts';
import type { DateReading } from './date-typed.ts';
import { TypedReader } from './typed-reader.ts';

/** What is asked of a trace, as it stands in the address. */
export const TRACE_FIELDS = ['order', 'bag', 'mould', 'from', 'until'] as const;
/** Those fields, as they were typed; the others are left out. */
export type TraceTyped = Readonly<Partial<Record<(typeof TRACE_FIELDS)[number], string>>>;

/** The pieces of an order, or of bags of one date, or out of one mould from a day to a day. */
export type TraceAsked =
  | { by: 'order'; order: string }
  | { by: 'bag'; on: string; material: string | null }
  | { by: 'mould'; mould: string; from: string | null; until: string | null };

/** Bags as the list on the page names them: the date and, after a space, the material. */
const bagTyped = (bag: string): TraceAsked | null => {
  const [, on = '', material = ''] = /^(\S+)(?: (.*))?$/.exec(bag) ?? [];
  return isDate(on) ? { by: 'bag', on, material: material || null } : null;
};

/** Reads what is asked; null where nothing is. */
export const traceTyped = (typed: TraceTyped, how: DateReading): Outcome<TraceAsked | null> => {
  const { order = '', bag = '', mould = '' } = typed;
  const reader = new TypedReader(typed, how);
  if (order !== '') return reader.outcome({ by: 'order', order });
  if (bag !== '') {
    const asked = bagTyped(bag);
    return asked ? reader.outcome(asked) : refuse('bag', 'Choose bags from the list.');
  }
  if (mould === '') return reader.outcome(null);
  const [from, until] = [reader.dateOrNone('from'), reader.dateOrNone('until')];
  if (from !== null && until !== null && until < from) reader.refuse('until', 'That is before the first day.');
  return reader.outcome({ by: 'mould', mould, from, until });
};
