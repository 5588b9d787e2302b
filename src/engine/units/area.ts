import { MM_PER_INCH } from './length.ts';
import type { Measure, Unit } from './measure.ts';

/** Exact by definition: 1 ft = 0.3048 m, so 1 ft2 = 0.09290304 m2. NIST SP 811 (2008), appendix B. */
const M2_PER_SQUARE_FOOT = Number((((MM_PER_INCH * 12) / 1000) ** 2).toPrecision(15));

const SQUARE_METRE: Unit = { names: ['m2', 'm²', 'sq m', 'square metres', 'square meters'], size: 1, system: 'metric' };
const SQUARE_FOOT: Unit = {
  names: ['sq ft', 'ft2', 'ft²', 'square feet', 'square foot'],
  ...{ size: M2_PER_SQUARE_FOOT, system: 'US' },
};

/** Areas, stored in m²; a bare number counts square feet in a US yard. */
export const AREA: Measure = {
  name: 'an area',
  units: [SQUARE_METRE, SQUARE_FOOT],
  bare: { metric: SQUARE_METRE, US: SQUARE_FOOT },
  below: new Map(),
  example: { metric: '6 m2 or 65 sq ft', US: '65 sq ft or 6 m2' },
};
