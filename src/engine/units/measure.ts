import { quoted } from '../../../shared/said-back.ts';
import type { UnitSystem } from '../../../shared/units.ts';
import { NUMBER_TYPED, numberTyped, plainFractions } from './number-typed.ts';
import { type Reading, read, unread } from './reading.ts';

/** A unit people type or read. */
export interface Unit {
  /** As it may be typed, in small letters without dots. */
  names: readonly string[];
  /** One of it in the unit that is stored. */
  size: number;
  system: UnitSystem;
}

/** Something that is measured: a length, a mass, a volume. */
export interface Measure {
  /** "a length", for the words of a refusal. */
  name: string;
  units: readonly Unit[];
  /** What a number without a unit counts. */
  bare: Readonly<Record<UnitSystem, Unit>>;
  /** The unit meant by a number that follows this one without a unit: inches after feet. */
  below: ReadonlyMap<Unit, Unit>;
  /** "1370 mm or 4 ft 6 in", for the words of a refusal. */
  example: Readonly<Record<UnitSystem, string>>;
}

interface Part {
  amount: number;
  unit: Unit | null;
}

/** Curly and straight quotes as ' and ", two single ones as a double one. */
const plainQuotes = (text: string): string => text.replace(/[’‘′]/g, "'").replace(/[”“″]/g, '"').replace(/''/g, '"');

/**
 * The unit of a measure that is called so, in any spelling it knows, small letters only; undefined where none is.
 *
 * Example: `unitNamed('lbs', MASS).size` is 0.45359237.
 */
export const unitNamed = (word: string, measure: Measure): Unit | undefined =>
  measure.units.find(({ names }) => names.includes(word));

/** What stands between two numbers: a unit, with or without a dot, a comma or a dash after it (4'-6"). */
const unitWord = (text: string): string =>
  text
    .toLowerCase()
    .replace(/[.,]|[-–]\s*$/g, '')
    .replace(/\s+/g, ' ')
    .trim();

/** The numbers of a text, each with the unit after it. */
const partsOf = (text: string, measure: Measure): Reading<Part[]> => {
  const parts: Part[] = [];
  for (let rest = text; rest !== ''; ) {
    const number = NUMBER_TYPED.exec(rest)?.[0];
    if (number === undefined) return unread(`${quoted(text)} is not ${measure.name}.`);
    const amount = numberTyped(number);
    if (!amount.ok) return amount;
    rest = rest.slice(number.length);
    const between = /^(?:[^\d.,]|[.,](?!\d))*/.exec(rest)?.[0] ?? '';
    rest = rest.slice(between.length);
    const word = unitWord(between);
    const unit = word === '' ? null : unitNamed(word, measure);
    if (unit === undefined) return unread(`${quoted(word)} is not a unit for ${measure.name} here.`);
    parts.push({ amount: amount.value, unit });
  }
  return parts.length > 0 ? read(parts) : unread('Nothing was written.');
};

/** Each part's unit: the one written, or the one that a bare number means in its place. */
const withUnits = (
  parts: readonly Part[],
  measure: Measure,
  system: UnitSystem,
): { amount: number; unit: Unit }[] | null => {
  const whole: { amount: number; unit: Unit }[] = [];
  for (const { amount, unit } of parts) {
    const last = whole.at(-1);
    const meant = unit ?? (last ? measure.below.get(last.unit) : parts.length === 1 ? measure.bare[system] : undefined);
    if (!meant) return null;
    if (last && (meant.size >= last.unit.size || meant.system !== last.unit.system || !Number.isInteger(last.amount)))
      return null;
    whole.push({ amount, unit: meant });
  }
  return whole;
};

/**
 * Takes away what binary fractions add: 15 figures are what they hold for sure.
 *
 * Example: `exact(0.1 + 0.2)` is 0.3.
 */
export const exact = (value: number): number => Number(value.toPrecision(15));

const LARGEST = 1e9;

/**
 * What a typed measure comes to in the stored unit: one number with or without a unit, or several with ever smaller units
 * of one system ("4 ft 6 in"), all but the last of them whole. `system` says what a bare number counts. A text that can't
 * be read, or is beyond all measure, is refused in words that show how to write it.
 *
 * Example: `readMeasure('4 ft 6', LENGTH, 'US')` reads 1371.6 (mm).
 */
export const readMeasure = (text: string, measure: Measure, system: UnitSystem): Reading<number> => {
  const how = `Write it like ${measure.example[system]}.`;
  const parts = partsOf(plainQuotes(plainFractions(text)), measure);
  if (!parts.ok) return unread(`${parts.reason} ${how}`);
  const whole = withUnits(parts.value, measure, system);
  if (!whole) return unread(`${quoted(text)} is not ${measure.name}. ${how}`);
  const value = exact(whole.reduce((sum, { amount, unit }) => sum + amount * unit.size, 0));
  return value <= LARGEST ? read(value) : unread(`${quoted(text)} is far too much. ${how}`);
};

/**
 * A number with as many decimals as are asked for at most.
 *
 * Example: `figure(13.50, 1)` is "13.5", `figure(2 / 3, 2)` is "0.67".
 */
export const figure = (value: number, decimals: number): string => String(Number(value.toFixed(decimals)));
