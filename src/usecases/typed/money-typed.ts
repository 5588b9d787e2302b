import { quoted } from '../../../shared/said-back.ts';
import { minorDigits } from '../../engine/cost/minor-units.ts';

/** The signs that may stand beside an amount: "€", "EUR", "$", "US$". */
const signsOf = (currency: string): string[] => {
  const signOf = (currencyDisplay: 'symbol' | 'narrowSymbol') =>
    new Intl.NumberFormat('en', { style: 'currency', currency, currencyDisplay })
      .formatToParts(0)
      .find(({ type }) => type === 'currency')?.value ?? currency;
  const narrow = signOf('narrowSymbol');
  return [currency, signOf('symbol'), narrow, currency.slice(0, 2) + narrow].map((sign) => sign.toLowerCase());
};

const withoutSign = (text: string, currency: string): string => {
  const plain = text
    .replace(/[\u00a0\u202f]/g, ' ')
    .trim()
    .toLowerCase();
  const signs = signsOf(currency).sort((a, b) => b.length - a.length);
  const sign = signs.find((one) => plain.startsWith(one) || plain.endsWith(one));
  if (sign === undefined) return plain;
  return (plain.startsWith(sign) ? plain.slice(sign.length) : plain.slice(0, -sign.length)).trim();
};

/**
 * Thousands set apart by commas, and a point before the decimals; by points, and a comma before them; by spaces or apostrophes,
 * and either; or bare figures.
 */
const GROUPED = /^[1-9]\d{0,2}(?:(?:,\d{3})+(?:\.\d+)?|(?:\.\d{3})+,\d+|(?:[ '’]\d{3})+(?:[.,]\d+)?)$/;
const PLAIN = /^\d{1,9}([.,]\d+)?$/;

/** The last comma or point stands before the decimals, unless it sets thousands apart. */
const plainNumber = (text: string): string => {
  if (!GROUPED.test(text)) return text.replace(',', '.');
  const [, whole = text, decimals] = /^(.*)[.,](\d+)$/.exec(text) ?? [];
  const areDecimals = decimals !== undefined && !(text.indexOf('.') < 0 && /^[\d,]+$/.test(text));
  return (areDecimals ? whole : text).replace(/\D/g, '') + (areDecimals ? `.${decimals}` : '');
};

const exampleOf = (digits: number): string => (129).toFixed(digits);

/**
 * A price as it is typed, with or without the currency's sign; null when nothing was. Refuses more decimals than the currency
 * has, and a comma that could stand for thousands or for decimals.
 *
 * Example: `moneyTyped('€129,50', 'EUR')` is 129.5; `moneyTyped('129.5', 'JPY')` is refused.
 */
export const moneyTyped = (
  text: string,
  currency: string,
): { ok: true; value: number | null } | { ok: false; reason: string } => {
  if (text.trim() === '') return { ok: true, value: null };
  const digits = minorDigits(currency);
  const plain = withoutSign(text, currency);
  const how = `Write it like ${exampleOf(digits)}.`;
  const unread = (why: string) => ({ ok: false as const, reason: `${why} ${how}` });
  // With three decimals to the currency a comma before three figures may be either.
  if (digits === 3 && /^[1-9]\d{0,2},\d{3}$/.test(plain))
    return unread(`${quoted(text)} could be thousands or decimals. Leave the comma out, or write a point.`);
  if (!GROUPED.test(plain) && !PLAIN.test(plain)) return unread(`${quoted(text)} is no price.`);
  const number = plainNumber(plain);
  const decimals = (number.split('.')[1] ?? '').length;
  if (decimals > digits)
    return unread(
      digits === 0
        ? `${currency} has no smaller part, so ${quoted(text)} can't be paid.`
        : `${currency} has ${digits} decimals at most.`,
    );
  return { ok: true, value: Number(number) };
};
