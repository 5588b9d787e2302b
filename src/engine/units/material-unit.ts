import { quoted } from '../../../shared/said-back.ts';
import type { UnitSystem } from '../../../shared/units.ts';
import { AREA } from './area.ts';
import { LENGTH } from './length.ts';
import { MASS } from './mass.ts';
import { exact, type Measure, readMeasure, type Unit, unitNamed } from './measure.ts';
import { NUMBER_TYPED, numberTyped, plainFractions } from './number-typed.ts';
import { type Reading, read, unread } from './reading.ts';
import { VOLUME } from './volume.ts';

/** How amounts of a material are shown and typed: in which unit, and how many of it make one of the unit they are kept in. */
export interface ShownUnit {
  word: string;
  perUnit: number;
}

const MEASURES = [MASS, VOLUME, LENGTH, AREA];

/** The unit of the other system that is about as large: a maker who weighs in grams weighs in ounces there. */
const COUNTERPARTS: Readonly<Record<string, string>> = {
  ...{ g: 'oz', kg: 'lb', t: 'lb', ml: 'fl oz', l: 'qt', mm: 'in', cm: 'in', m: 'ft', m2: 'sq ft' },
  ...{ oz: 'g', lb: 'kg', 'fl oz': 'ml', qt: 'l', gal: 'l', in: 'mm', ft: 'm', 'sq ft': 'm2' },
};

interface Known {
  measure: Measure;
  unit: Unit;
}

/**
 * What a unit of free text measures: null for one that measures nothing ("bag"). Dots and capitals do not count.
 *
 * Example: `measuredBy('lbs.')` is a mass, in pounds.
 */
export const measuredBy = (text: string): Known | null => {
  const word = text.toLowerCase().replaceAll('.', '').trim();
  for (const measure of MEASURES) {
    const unit = unitNamed(word, measure);
    if (unit) return { measure, unit };
  }
  return null;
};

const shownKnown = ({ measure, unit }: Known, system: UnitSystem): Unit => {
  const other = unit.system === system ? undefined : COUNTERPARTS[unit.names[0] ?? ''];
  return (other === undefined ? undefined : unitNamed(other, measure)) ?? unit;
};

/**
 * The unit in which amounts of a material are shown in a yard, given the free text that its amounts are kept in. Words
 * that are no measure (bag, sheet, each) stay as they are. Which unit it is depends on the material alone and never on
 * the amount, so that a number typed without a unit always counts the same. NIST SP 811 (2008), appendix B.
 *
 * Example: `shownUnit('kg', 'US').word` is "lb", `shownUnit('kg', 'US').perUnit` is 2.20462; `shownUnit('bag', 'US')`
 * is `{ word: 'bag', perUnit: 1 }`.
 */
export const shownUnit = (unit: string, system: UnitSystem): ShownUnit => {
  const known = measuredBy(unit);
  if (!known) return { word: unit, perUnit: 1 };
  const shown = shownKnown(known, system);
  return shown === known.unit
    ? { word: unit, perUnit: 1 }
    : { word: shown.names[0] ?? unit, perUnit: known.unit.size / shown.size };
};

/** The 2 of a square is no number: "6 m2" as "6 m²". */
const plainSquares = (text: string): string => text.replace(/(?<![a-z])(m|ft)2(?!\d)/gi, '$1²');

const HOW = 'Write it like 12 or 2.5.';

/** A number, with or without the word that the material counts in: "2", "2.5 bags". */
const readCount = (text: string, unit: string): Reading<number> => {
  const plain = plainFractions(text);
  const number = NUMBER_TYPED.exec(plain)?.[0] ?? '';
  const word = plain.slice(number.length).trim().toLowerCase();
  const own = unit.toLowerCase();
  const rest = word === '' || word === own || word === `${own}s` || `${word}s` === own;
  if (number === '' || !rest) return unread(`${quoted(text)} is no number. ${HOW}`);
  const amount = numberTyped(number);
  return amount.ok ? amount : unread(`${quoted(text)} is no number. ${amount.reason}`);
};

/**
 * A typed amount of a material, in the unit it is kept in. A number alone counts the unit that is shown; a measure may be
 * typed in any unit of its kind, of either system. Refuses what can't be read, in words that show how to write it.
 *
 * Example: `readAmount('2 lb', 'g', 'metric')` reads 907.18474; `readAmount('3', 'bag', 'US')` reads 3.
 */
export const readAmount = (text: string, unit: string, system: UnitSystem): Reading<number> => {
  const known = measuredBy(unit);
  if (!known) return readCount(text, unit);
  const bare = shownKnown(known, system);
  const other = shownKnown({ ...known, unit: bare }, system === 'metric' ? 'US' : 'metric');
  const example = `12 ${bare.names[0]} or 2.5 ${other.names[0]}`;
  const measure = { ...known.measure, bare: { metric: bare, US: bare }, example: { metric: example, US: example } };
  const amount = readMeasure(plainSquares(text), measure, system);
  return amount.ok ? read(exact(amount.value / known.unit.size)) : amount;
};

/**
 * Why a typed amount is finer than anybody counts a material, in words; null where it is not. What is weighed or measured has as
 * many decimals as it likes; whole ones (bags, sheets) and parts of them have two, and three may be thousands set apart.
 *
 * Example: `tooFine('1.200', 'bag')` says so, `tooFine('1.20', 'bag')` and `tooFine('1.200', 'kg')` are null.
 */
export const tooFine = (text: string, unit: string): string | null =>
  measuredBy(unit) || !/\d[.,]\d{3}/.test(text)
    ? null
    : `${quoted(text)} has more than two decimals. Write whole ones, or parts like 2.5; and thousands with no sign between.`;
