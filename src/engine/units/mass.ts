import type { UnitSystem } from '../../../shared/units.ts';
import { figure, type Measure, readMeasure, type Unit } from './measure.ts';
import type { Reading } from './reading.ts';

/** Exact by definition: 1 lb (avoirdupois) = 0.45359237 kg, 1 lb = 16 oz. NIST SP 811 (2008), appendix B. */
const KG_PER_POUND = 0.45359237;

const KG: Unit = { names: ['kg', 'kgs', 'kilo', 'kilos', 'kilogram', 'kilograms'], size: 1, system: 'metric' };
const GRAM: Unit = { names: ['g', 'gram', 'grams'], size: 0.001, system: 'metric' };
const TONNE: Unit = { names: ['t', 'tonne', 'tonnes'], size: 1000, system: 'metric' };
const POUND: Unit = { names: ['lb', 'lbs', 'pound', 'pounds'], size: KG_PER_POUND, system: 'US' };
const OUNCE: Unit = { names: ['oz', 'ounce', 'ounces'], size: KG_PER_POUND / 16, system: 'US' };

/** Masses, stored in kg; a bare number counts pounds in a US yard, and ounces after pounds. */
export const MASS: Measure = {
  name: 'a weight',
  units: [KG, GRAM, TONNE, POUND, OUNCE],
  bare: { metric: KG, US: POUND },
  below: new Map([[POUND, OUNCE]]),
  example: { metric: '25 kg or 55 lb', US: '55 lb or 25 kg' },
};

/**
 * A typed mass in kg; a bare number is kilograms in a metric yard, pounds in a US one. Refuses what can't be read.
 *
 * Example: `readMass('30 lb', 'metric')` reads 13.6077711.
 */
export const readMass = (text: string, system: UnitSystem): Reading<number> => readMeasure(text, MASS, system);

/**
 * A mass in kg, to a tenth of a kilogram or pound.
 *
 * Example: `massText(13.6077711, 'metric')` is "13.6 kg", `massText(13.6077711, 'US')` is "30 lb".
 */
export const massText = (kg: number, system: UnitSystem): string =>
  system === 'metric' ? `${figure(kg, 1)} kg` : `${figure(kg / KG_PER_POUND, 1)} lb`;
