import type { TypedLength, UnitSystem } from '../../../shared/units.ts';
import { figure, type Measure, readMeasure, type Unit } from './measure.ts';
import { type Reading, read } from './reading.ts';

/** Exact by definition: 1 in = 25.4 mm, 1 ft = 12 in. NIST SP 811 (2008), appendix B; NIST Handbook 44, appendix C. */
export const MM_PER_INCH = 25.4;
const INCHES_PER_FOOT = 12;

const MM: Unit = { names: ['mm', 'millimetre', 'millimetres', 'millimeter', 'millimeters'], size: 1, system: 'metric' };
const CM: Unit = {
  names: ['cm', 'centimetre', 'centimetres', 'centimeter', 'centimeters'],
  size: 10,
  system: 'metric',
};
const M: Unit = { names: ['m', 'metre', 'metres', 'meter', 'meters'], size: 1000, system: 'metric' };
const INCH: Unit = { names: ['in', 'ins', 'inch', 'inches', '"'], size: MM_PER_INCH, system: 'US' };
const FOOT: Unit = { names: ['ft', 'foot', 'feet', "'"], size: MM_PER_INCH * INCHES_PER_FOOT, system: 'US' };

/** Lengths, stored in mm; a bare number counts inches in a US yard, and so does one that follows on feet. */
export const LENGTH: Measure = {
  name: 'a length',
  units: [MM, CM, M, INCH, FOOT],
  bare: { metric: MM, US: INCH },
  below: new Map([[FOOT, INCH]]),
  example: { metric: '1370 mm, 1.37 m or 4 ft 6 in', US: '4 ft 6 in, 54 1/2 in or 1370 mm' },
};

/**
 * A typed length in mm, kept with the text it was typed as. A bare number is millimetres in a metric yard and inches
 * in a US one. Refuses what can't be read.
 *
 * Example: `readLength('4 ft 6', 'metric')` reads `{ typed: '4 ft 6', mm: 1371.6 }`.
 */
export const readLength = (text: string, system: UnitSystem): Reading<TypedLength> => {
  const mm = readMeasure(text, LENGTH, system);
  return mm.ok ? read({ typed: text.trim(), mm: mm.value }) : mm;
};

const SIXTEENTHS = 16;

/** Sixteenths as a fraction in its lowest terms: 8 of 16 is "1/2". */
const fractionText = (sixteenths: number): string => {
  let [over, under] = [sixteenths, SIXTEENTHS];
  while (over % 2 === 0) [over, under] = [over / 2, under / 2];
  return `${over}/${under}`;
};

const feetText = (mm: number): string => {
  const sixteenths = Math.round((mm / MM_PER_INCH) * SIXTEENTHS);
  const inches = Math.floor(sixteenths / SIXTEENTHS);
  const [feet, over] = [Math.floor(inches / INCHES_PER_FOOT), inches % INCHES_PER_FOOT];
  const part = sixteenths % SIXTEENTHS === 0 ? '' : fractionText(sixteenths % SIXTEENTHS);
  const rest = over > 0 ? [over, part].filter(Boolean).join(' ') : part;
  if (feet === 0) return `${rest || 0} in`;
  return rest === '' ? `${feet} ft` : `${feet} ft ${rest} in`;
};

/**
 * A length that nobody typed, in the yard's units: whole tenths of a millimetre, or feet, inches and sixteenths, the
 * nearest of them. mm >= 0.
 *
 * Example: `lengthText(1371.6, 'metric')` is "1371.6 mm", `lengthText(1371.6, 'US')` is "4 ft 6 in".
 */
export const lengthText = (mm: number, system: UnitSystem): string =>
  system === 'metric' ? `${figure(mm, 1)} mm` : feetText(mm);

/**
 * The size of a piece of a sheet.
 *
 * Example: `sizeText({ widthMm: 300, lengthMm: 150 }, 'metric')` is "300 mm by 150 mm".
 */
export const sizeText = ({ widthMm, lengthMm }: { widthMm: number; lengthMm: number }, system: UnitSystem): string =>
  `${lengthText(widthMm, system)} by ${lengthText(lengthMm, system)}`;

/**
 * A length, short enough for a drawing that says once what it measures in: bare millimetres, or inches.
 *
 * Example: `shortLengthText(1371.6, 'metric')` is "1371.6", `shortLengthText(1371.6, 'US')` is `'54"'`.
 */
export const shortLengthText = (mm: number, system: UnitSystem): string => {
  if (system === 'metric') return figure(mm, 1);
  const sixteenths = Math.round((mm / MM_PER_INCH) * SIXTEENTHS);
  const part = sixteenths % SIXTEENTHS === 0 ? '' : fractionText(sixteenths % SIXTEENTHS);
  const inches = Math.floor(sixteenths / SIXTEENTHS);
  return `${[inches > 0 || part === '' ? inches : '', part].filter((each) => each !== '').join(' ')}"`;
};
