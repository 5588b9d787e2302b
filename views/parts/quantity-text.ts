import { listText } from '../../shared/list-text.ts';
import { plural } from '../../shared/plural.ts';

/** Units that are written after a number as they are; every other one is a word and takes an s. */
const MEASURES: Readonly<Record<string, string>> = {
  ...{ g: 'g', kg: 'kg', t: 't', m: 'm', cm: 'cm', mm: 'mm', m2: 'm²', 'm²': 'm²', l: 'l', ml: 'ml' },
  ...{ oz: 'oz', lb: 'lb', ft: 'ft', in: 'in', 'sq ft': 'sq ft', qt: 'qt', gal: 'gal', 'fl oz': 'fl oz' },
};

/** A unit that measures something, so that an amount may be typed in another one: no bag, and nothing counted. */
export const isMeasure = (unit: string): boolean => MEASURES[unit] !== undefined;

const numberText = (quantity: number): string => String(Number(quantity.toFixed(2)));

const HALF = 0.5;

/** "6 bags", "half a bag", "1 bag", "500 g", "3.5 m²"; without a unit, or with "each", the number and a times sign: "10 ×". */
export const quantityText = (quantity: number, unit: string): string => {
  const number = numberText(quantity);
  if (unit === '' || unit === 'each') return `${number} ×`;
  const measure = MEASURES[unit];
  if (measure) return `${number} ${measure}`;
  if (quantity === HALF) return `half ${/^[aeiou]/i.test(unit) ? 'an' : 'a'} ${unit}`;
  return `${number} ${plural(quantity, unit)}`;
};

/** "9 bags", "700 g"; things counted by the piece are a bare number. */
export const amountText = (quantity: number, unit: string): string =>
  unit === 'each' || unit === '' ? numberText(quantity) : quantityText(quantity, unit);

const SMALL_NUMBERS = ['No', 'One', 'Two', 'Three', 'Four', 'Five', 'Six', 'Seven', 'Eight', 'Nine', 'Ten'];

/** At the start of a sentence: "Two", "Ten", "11". */
export const countWord = (count: number): string => SMALL_NUMBERS[count] ?? String(count);

const timesText = (count: number): string => (count === 2 ? 'twice' : `${count} times`);

/** Equal entries are counted: "1100 no. 1 (twice), 800 no. 2 and 800 no. 3 (3 times)". */
export const countedText = (items: readonly string[]): string => {
  const counts = new Map<string, number>();
  for (const item of items) counts.set(item, (counts.get(item) ?? 0) + 1);
  return listText([...counts].map(([item, count]) => (count === 1 ? item : `${item} (${timesText(count)})`)));
};

/** So little of an amount is none: as it is rounded, 0 would be shown. */
export const LEAST_SHOWN = 0.005;
