import { quoted } from '../../../shared/said-back.ts';
import { dateOfDay, dayNumber, isDate } from '../../../shared/time.ts';
import { type Reading, read, unread } from '../units/reading.ts';

/** What the first of two numbers of a date is. */
export type CellOrder = 'day first' | 'month first';

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

/** Two figures of a year are of this century: no yard has dates of the last one. */
const fullYear = (year: string): string => (year.length === 2 ? `20${year}` : year);

const YEAR_FIRST = /^(\d{4})([-./])(\d{1,2})\2(\d{1,2})$/;
const YEAR_LAST = /^(\d{1,2})([-./])(\d{1,2})\2(\d{4}|\d{2})$/;
const DAY_NAME = /^(\d{1,2})[ -]([a-z]{3,9})\.?[ -](\d{4}|\d{2})$/i;
const NAME_DAY = /^([a-z]{3,9})\.? (\d{1,2}),? (\d{4}|\d{2})$/i;

const FULL_NAMES = 'January February March April May June July August September October November December'.split(' ');

/** "26 Dec 2026", "26-Dec-26", "December 26, 2026"; null for what names no month. */
const withName = (text: string): Reading<string> | null => {
  const [, dayBefore, nameAfter, yearAfter] = DAY_NAME.exec(text) ?? [];
  const [, nameBefore, dayAfter, yearBefore] = NAME_DAY.exec(text) ?? [];
  const [day, name, year] = [dayBefore ?? dayAfter, nameAfter ?? nameBefore, yearAfter ?? yearBefore];
  if (!day || !name || !year) return null;
  const month = FULL_NAMES.findIndex((one) => one.toLowerCase().startsWith(name.toLowerCase()));
  return month < 0 ? null : existing(fullYear(year), String(month + 1), day);
};

/** What a cell says of the order of its two numbers; null where it could be either, or has a point, and so the day first. */
const orderOf = (cell: string): CellOrder | null => {
  const [, first, sign, second] = YEAR_LAST.exec(cell.trim()) ?? [];
  if (!first || !second || sign === '.') return null;
  if (Number(first) > 12) return 'day first';
  return Number(second) > 12 ? 'month first' : null;
};

/**
 * The order in which a column has day and month, where at least one of its dates can be read one way only and no other
 * contradicts it; null otherwise. A spreadsheet writes all of a column alike.
 *
 * Example: `orderOfCells(['4/5/2027', '14/5/2027'])` is "day first"; of '4/5/2027' alone it is null.
 */
export const orderOfCells = (cells: readonly string[]): CellOrder | null => {
  // A day that does not exist says nothing of the others.
  const orders = new Set(cells.flatMap((cell) => (dateOfCell(cell).ok ? (orderOf(cell) ?? []) : [])));
  return orders.size === 1 ? [...orders][0]! : null;
};

/**
 * A date of a cell, as `YYYY-MM-DD`: 2027-05-08, 8.5.2027 (the day first), 26 Dec 2026, or 8/5/27 and 8-5-2027 where only one
 * order makes a date or the column has an order. Refuses a day that does not exist, and one that can be read two ways,
 * naming both.
 *
 * Example: `dateOfCell('31/02/2027')` is refused: "31 Feb 2027 does not exist"; '4/5/2027' as well;
 * `dateOfCell('14/5/27')` reads "2027-05-14".
 */
export const dateOfCell = (cell: string, order: CellOrder | null = null): Reading<string> => {
  const text = cell.trim();
  const [, year, , month, day] = YEAR_FIRST.exec(text) ?? [];
  if (year && month && day) return existing(year, month, day);
  const [, first, sign, second, last] = YEAR_LAST.exec(text) ?? [];
  if (!first || !second || !last) return withName(text) ?? unread(`${quoted(text)} is no date. ${HOW}`);
  const full = fullYear(last);
  if (sign === '.') return existing(full, second, first);
  const known = orderOf(text) ?? (first.padStart(2, '0') === second.padStart(2, '0') ? 'day first' : order);
  if (known === 'day first') return existing(full, second, first);
  if (known === 'month first') return existing(full, first, second);
  const [one, other] = [dayWords(full, second, first), dayWords(full, first, second)];
  return unread(`${text} can be read two ways, as ${one} or ${other}. ${HOW}`);
};
