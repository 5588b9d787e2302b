import type { UnitSystem } from '../../../shared/units.ts';
import { figure, type Measure, readMeasure, type Unit } from './measure.ts';
import type { Reading } from './reading.ts';

const MM: Unit = { names: ['mm', 'l/m2', 'l/m²'], size: 1, system: 'metric' };
/** An inch is 25.4 mm, exact by definition (NIST SP 811, appendix B). */
const INCH: Unit = { names: ['in', 'inch', 'inches', '"'], size: 25.4, system: 'US' };

const RAIN: Measure = {
  name: 'an amount of rain',
  units: [MM, INCH],
  bare: { metric: MM, US: INCH },
  below: new Map(),
  example: { metric: '8 mm', US: '0.3 in' },
};

/**
 * Typed rain in mm of a day; a bare number is mm in a metric yard, inches in a US one. Refuses what is no amount.
 *
 * Example: `readRain('0.5', 'US')` reads 12.7.
 */
export const readRain = (text: string, system: UnitSystem): Reading<number> => readMeasure(text, RAIN, system);

/**
 * Rain of a day in mm, to a tenth of a millimetre or a hundredth of an inch.
 *
 * Example: `rainText(8, 'US')` is "0.31 in".
 */
export const rainText = (mm: number, system: UnitSystem): string =>
  system === 'US' ? `${figure(mm / INCH.size, 2)} in` : `${figure(mm, 1)} mm`;
