import type { OrderDraft } from '../typed/order-form.ts';
import { lineOf } from '../typed/what-ordered.ts';

/** One row of the question: what is asked for, and how many; null where the number could not be read. */
export interface RowAsked {
  what: string;
  quantity: number | null;
}

/** The rows as lines of an order; null where one of them cannot be read, or there is none. */
export const linesAsked = (rows: readonly RowAsked[]): OrderDraft['lines'] | null => {
  const lines = rows.map(({ what, quantity }, row) => ({
    row,
    line: quantity === null ? null : lineOf(what, quantity),
  }));
  const read = lines.flatMap(({ row, line }) => (line ? [{ row, line }] : []));
  return read.length > 0 && read.length === lines.length ? read : null;
};
