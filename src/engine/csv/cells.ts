import { quoted } from '../../../shared/said-back.ts';
import { dateOfDay, dayNumber, isDate } from '../../../shared/time.ts';
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

const MONTHS = 'Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec'.split(' ');
const HOW = 'Write it like 2027-05-08';

const dateOf = (year: string, month: string, day: string): string =>
  `${year}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`;

const dayWords = (year: string, month: string, day: string): string =>
  `${Number(day)} ${MONTHS[Number(month) - 1] ?? `month ${Number(month)}`} ${year}`;

const existing = (year: string, month: string, day: string): Reading<string> => {
  const date = dateOf(year, month, day);
  return isDate(date) && dateOfDay(dayNumber(date)) === date
    ? read(date)
    : unread(`${dayWords(year, month, day)} does not exist`);
};

/**
 * A date of a cell, as `YYYY-MM-DD`: 2027-05-08, 8.5.2027 (the day first), or 8/5/2027 where only one order makes a
 * date. Refuses a day that does not exist, and one that can be read two ways, naming both.
 *
 * Example: `dateOfCell('31/02/2027')` is refused: "31 Feb 2027 does not exist"; '4/5/2027' as well;
 * `dateOfCell('14/5/2027')` reads "2027-05-14".
 */
export const dateOfCell = (cell: string): Reading<string> => {
  const text = cell.trim();
  const [, year, month, day] = /^(\d{4})-(\d{1,2})-(\d{1,2})$/.exec(text) ?? [];
  if (year && month && day) return existing(year, month, day);
  const [, first, sign, second, last] = /^(\d{1,2})([./])(\d{1,2})\2(\d{4})$/.exec(text) ?? [];
  if (!first || !second || !last) return unread(`${quoted(text)} is no date. ${HOW}`);
  if (sign === '.' || Number(first) > 12) return existing(last, second, first);
  if (Number(second) > 12) return existing(last, first, second);
  if (Number(first) === Number(second)) return existing(last, second, first);
  const [one, other] = [dayWords(last, second, first), dayWords(last, first, second)];
  return unread(`${text} can be read two ways, as ${one} or ${other}. ${HOW}`);
};
