import { quoted } from '../../../shared/said-back.ts';
import { type Reading, read, unread } from './reading.ts';

/** Fractions that have a sign of their own, as they would be typed without it. */
const SIGNS: Readonly<Record<string, string>> = {
  ...{ '¼': '1/4', '½': '1/2', '¾': '3/4', '⅓': '1/3', '⅔': '2/3', '⅛': '1/8', '⅜': '3/8', '⅝': '5/8', '⅞': '7/8' },
};

/**
 * A text with "½" and the like as 1/2, odd spaces as spaces, the fraction slash as a slash.
 *
 * Example: `plainFractions('54½')` is "54 1/2".
 */
export const plainFractions = (text: string): string =>
  text
    .replace(/[¼½¾⅓⅔⅛⅜⅝⅞]/g, (sign) => ` ${SIGNS[sign]}`)
    .replace(/\u2044/g, '/')
    .replace(/\s+/g, ' ')
    .trim();

/** A number at the start of a text: "54", "1.37", "1,37", "1/2", "54 1/2", "54-1/2". */
export const NUMBER_TYPED = /^(?:(?:\d+[ -])?\d+\/\d+|\d+(?:[.,]\d+)?|[.,]\d+)/;

const fractionOf = (text: string): Reading<number> => {
  const parts = text.split(/[ -]/);
  const [over = 0, under = 0] = (parts.at(-1) ?? '').split('/').map(Number);
  if (under === 0) return unread(`${quoted(text)} divides by nothing.`);
  return read((parts.length > 1 ? Number(parts[0]) : 0) + over / under);
};

/**
 * The number a text stands for, fractions and decimal commas too; it has the form of `NUMBER_TYPED`. A comma before
 * three figures might be a decimal comma or stand for thousands, so it is refused, unless only a 0 stands before it.
 *
 * Example: `numberTyped('54 1/2')` reads 54.5; `numberTyped('1,370').ok` is false.
 */
export const numberTyped = (text: string): Reading<number> => {
  if (text.includes('/')) return fractionOf(text);
  if (/^[1-9]\d*,\d{3}$/.test(text)) {
    const [whole = '', rest = ''] = text.split(',');
    return unread(
      `${quoted(text)} could be ${whole}${rest} or ${Number(`${whole}.${rest}`)}. Write it without the comma.`,
    );
  }
  return read(Number(text.replace(',', '.')));
};
