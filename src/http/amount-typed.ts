import type { Fault } from '../../shared/fault.ts';
import type { Typed } from './form.ts';

/** "2", "2.5" or "2,5". Three figures after a comma might be thousands, so they are no number. */
const AMOUNT = /^\d{1,7}(\.\d{1,6}|,\d{1,2})?$/;

/** A field for an amount: null when it is empty, a fault when what was typed is no number. */
export const amountTyped = (typed: Typed, name: string): { amount: number | null; faults: Fault[] } => {
  const text = typed[name] ?? '';
  if (text === '') return { amount: null, faults: [] };
  if (AMOUNT.test(text)) return { amount: Number(text.replace(',', '.')), faults: [] };
  return { amount: null, faults: [{ path: name, message: `"${text}" is no number. Write it like 12 or 2.5.` }] };
};
