import type { UnitSystem } from '../../../shared/units.ts';
import { figure, type Measure, readMeasure, type Unit } from './measure.ts';
import type { Reading } from './reading.ts';

const KMH: Unit = { names: ['km/h', 'kmh', 'kph'], size: 1, system: 'metric' };
/** A mile is 1609.344 m, exact by definition; a nautical one 1852 m (NIST SP 811, appendix B). */
const MPH: Unit = { names: ['mph', 'mi/h'], size: 1.609344, system: 'US' };
const METRES: Unit = { names: ['m/s'], size: 3.6, system: 'metric' };
const KNOT: Unit = { names: ['kn', 'kt', 'kts', 'knot', 'knots'], size: 1.852, system: 'metric' };

const WIND: Measure = {
  name: 'a wind',
  units: [KMH, MPH, METRES, KNOT],
  bare: { metric: KMH, US: MPH },
  below: new Map(),
  example: { metric: '20 km/h', US: '12 mph' },
};

/**
 * A typed wind in km/h; a bare number is km/h in a metric yard, miles an hour in a US one. Refuses what is no wind.
 *
 * Example: `readWind('10', 'US')` reads 16.09344, `readWind('5 m/s', 'metric')` 18.
 */
export const readWind = (text: string, system: UnitSystem): Reading<number> => readMeasure(text, WIND, system);

/**
 * A wind in km/h, to a whole number of the yard's own unit.
 *
 * Example: `windText(16, 'US')` is "10 mph".
 */
export const windText = (kmh: number, system: UnitSystem): string =>
  system === 'US' ? `${figure(kmh / MPH.size, 0)} mph` : `${figure(kmh, 0)} km/h`;
