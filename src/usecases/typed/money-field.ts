import { LARGEST } from '../../../shared/number.ts';
import { moneyTyped } from './money-typed.ts';
import type { TypedReader } from './typed-reader.ts';

/** An amount of money in a field, in the yard's currency; null where nothing was typed, or, beside a fault, where it can't be read. */
export const moneyOrNone = (reader: TypedReader, name: string, currency: string): number | null => {
  const read = moneyTyped(reader.text(name), currency);
  if (!read.ok) reader.refuse(name, read.reason);
  if (!read.ok || read.value === null) return null;
  if (read.value > LARGEST) reader.refuse(name, `That is more than ${LARGEST.toLocaleString('en')}.`);
  return read.value;
};

/** "35", "35 %" or "2,5": a part of a hundred, up to `most`; null where nothing was typed. */
export const percentOrNone = (reader: TypedReader, name: string, ask: string, most: number): number | null => {
  const text = reader.text(name);
  if (text === '') return null;
  const [, number = ''] = /^(\d{1,3}(?:[.,]\d{1,4})?)\s*%?$/.exec(text) ?? [];
  const percent = number === '' ? Number.NaN : Number(number.replace(',', '.'));
  if (percent <= most) return percent;
  reader.refuse(name, `${ask} Write a number, 0 to ${most}.`);
  return null;
};
