/**
 * How many decimals a currency has: none for the yen, three for the Kuwaiti dinar, two for most (ISO 4217, by Intl).
 *
 * Example: `minorDigits('EUR')` is 2, `minorDigits('JPY')` is 0.
 */
export const minorDigits = (currency: string): number =>
  new Intl.NumberFormat('en', { style: 'currency', currency }).resolvedOptions().maximumFractionDigits ?? 2;

/** So close to a half is one: amounts are worked out in fractions of two, which miss most decimals by a hair. */
const HALF = 1e-6;

/**
 * The nearest whole number, and of two that are as near the even one (half-even, "banker's" rounding): over many amounts
 * it takes no side. Money is rounded by it and by nothing else.
 *
 * Example: `halfEven(2.5)` is 2, `halfEven(3.5)` is 4, `halfEven(2.51)` is 3.
 */
export const halfEven = (amount: number): number => {
  const below = Math.floor(amount);
  const rest = amount - below;
  if (Math.abs(rest - 0.5) > HALF) return rest > 0.5 ? below + 1 : below;
  return below % 2 === 0 ? below : below + 1;
};

/**
 * An amount of money in whole minor units of its currency, cents for most, half-even.
 *
 * Example: `toMinor(12.5, 'EUR')` is 1250, `toMinor(12.5, 'JPY')` is 12.
 */
export const toMinor = (amount: number, currency: string): number => halfEven(amount * 10 ** minorDigits(currency));

/**
 * Whole minor units as an amount that is written and stored.
 *
 * Example: `fromMinor(1250, 'EUR')` is 12.5, `fromMinor(1250, 'KWD')` is 1.25.
 */
export const fromMinor = (minor: number, currency: string): number => minor / 10 ** minorDigits(currency);
