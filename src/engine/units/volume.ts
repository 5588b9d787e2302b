import type { UnitSystem } from '../../../shared/units.ts';
import { figure, type Measure, readMeasure, type Unit } from './measure.ts';
import type { Reading } from './reading.ts';

/**
 * Exact by definition: 1 US gal = 231 in3 = 3.785411784 l, so 1 US qt = 0.946352946 l; 32 fl oz to the quart. NIST SP 811
 * (2008), appendix B; NIST Handbook 44, appendix C.
 */
const LITRES_PER_QUART = 0.946352946;
const FLUID_OUNCES_PER_QUART = 32;

const LITRE: Unit = { names: ['l', 'litre', 'litres', 'liter', 'liters'], size: 1, system: 'metric' };
const ML: Unit = {
  ...{ names: ['ml', 'millilitre', 'millilitres', 'milliliter', 'milliliters'], size: 0.001, system: 'metric' },
};
const GALLON: Unit = { names: ['gal', 'us gal', 'gallon', 'gallons'], size: 4 * LITRES_PER_QUART, system: 'US' };
const QUART: Unit = { names: ['qt', 'qts', 'us qt', 'quart', 'quarts'], size: LITRES_PER_QUART, system: 'US' };
const FLUID_OUNCE: Unit = {
  names: ['fl oz', 'floz', 'us fl oz', 'fluid ounce', 'fluid ounces'],
  ...{ size: LITRES_PER_QUART / FLUID_OUNCES_PER_QUART, system: 'US' },
};

/** Volumes, stored in litres; quarts and fluid ounces are those of the US. A bare number counts quarts in a US yard. */
export const VOLUME: Measure = {
  name: 'a volume',
  units: [LITRE, ML, GALLON, QUART, FLUID_OUNCE],
  bare: { metric: LITRE, US: QUART },
  below: new Map(),
  example: { metric: '4.7 l, 750 ml or 5 qt', US: '5 qt, 24 fl oz or 4.7 l' },
};

/**
 * A typed volume in litres, all US measures; a bare number is litres, or quarts in a US yard. Refuses what can't be
 * read.
 *
 * Example: `readVolume('5 qt', 'metric')` reads 4.73176473.
 */
export const readVolume = (text: string, system: UnitSystem): Reading<number> => readMeasure(text, VOLUME, system);

/**
 * A volume in litres, to a hundredth of a litre or quart; below one of them in whole ml or tenths of fl oz.
 *
 * Example: `volumeText(4.7, 'US')` is "4.97 qt", `volumeText(0.25, 'metric')` is "250 ml".
 */
export const volumeText = (litres: number, system: UnitSystem): string => {
  if (system === 'metric') return litres < 1 ? `${figure(litres * 1000, 0)} ml` : `${figure(litres, 2)} l`;
  const quarts = litres / LITRES_PER_QUART;
  return quarts < 1 ? `${figure(quarts * FLUID_OUNCES_PER_QUART, 1)} fl oz` : `${figure(quarts, 2)} qt`;
};
