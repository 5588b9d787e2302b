import { z } from 'zod';
import type { UnitSystem } from './units.ts';

/** The two ways that pages, sheets and messages are written in: spelling, order of a date, the clock. */
export const ENGLISHES = ['British', 'US'] as const;
/** Reads the name of one; the two are all there are. */
export const english = z.enum(ENGLISHES);
/** One of `ENGLISHES`. It changes nothing that is stored or planned. */
export type English = z.infer<typeof english>;

/** How a yard is written in that never said so: as where its units are at home. `englishOf('US')` is 'US'. */
export const englishOf = (system: UnitSystem): English => (system === 'US' ? 'US' : 'British');
