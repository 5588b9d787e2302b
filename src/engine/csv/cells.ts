import { quoted } from '../../../shared/said-back.ts';
import { type Reading, read, unread } from '../units/reading.ts';
import type { Dialect } from './dialect.ts';

const PLAIN = /^\d{1,12}([.,]\d+)?$/;

/**
 * A number of a cell, 0 or more. Its decimal sign is the file's own; the other one is understood too, unless three
 * figures behind it could be thousands. Thousands are never set apart.
 *
 * Example: in a file apart by semicolons `numberOfCell('1,125', COMMAS)` reads 1.125 and "1.125" is refused.
 */
export const numberOfCell = (cell: string, { decimal }: Dialect): Reading<number> => {
  const text = cell.trim();
  if (/^-/.test(text)) return unread(`${text} is below 0`);
  if (!PLAIN.test(text)) return unread(`${quoted(text)} is no number. Write it like 12 or 2${decimal}5`);
  const other = decimal === '.' ? ',' : '.';
  const [whole = '', rest = ''] = text.split(other);
  if (text.includes(other) && rest.length === 3 && !/^0/.test(whole))
    return unread(
      `${text} can be read two ways, as ${whole}${rest} or as ${whole}${decimal}${rest}. Write one of them`,
    );
  return read(Number(text.replace(',', '.')));
};

/** A sign or code of a currency before a number or behind it. */
const CURRENCY = /^(\p{Sc}|[A-Z]{3})\s*(?=[\d-])|(?<=\d)\s*(\p{Sc}|[A-Z]{3})$/u;

const signOf = (currency: string): string | undefined =>
  new Intl.NumberFormat('en', { style: 'currency', currency, currencyDisplay: 'narrowSymbol' })
    .formatToParts(0)
    .find(({ type }) => type === 'currency')?.value;

/**
 * As `numberOfCell`, for an amount of money: the sign or the code of its currency may stand beside it, and no other one.
 *
 * Example: `moneyOfCell('€0.95', POINTS, 'EUR')` reads 0.95; "$0.95" is refused there.
 */
export const moneyOfCell = (cell: string, dialect: Dialect, currency: string): Reading<number> => {
  const text = cell.trim();
  const [sign = ''] = CURRENCY.exec(text) ?? [];
  if (sign === '') return numberOfCell(text, dialect);
  if (![currency, signOf(currency)].includes(sign.trim()))
    return unread(`${quoted(text)} is in ${sign.trim()}, and the yard's money is ${currency}`);
  return numberOfCell(text.replace(sign, ''), dialect);
};

/**
 * As `numberOfCell`, for what counts: a fraction is refused in words.
 *
 * Example: `wholeOfCell('12', POINTS)` reads 12; `wholeOfCell('1.5', POINTS)` is `{ ok: false, reason: '1.5 has to be
 * a whole number' }`.
 */
export const wholeOfCell = (cell: string, dialect: Dialect): Reading<number> => {
  const number = numberOfCell(cell, dialect);
  if (number.ok && !Number.isInteger(number.value)) return unread(`${cell.trim()} has to be a whole number`);
  return number;
};
