import { z } from 'zod';

/** What people in the yard measure with. Everything is stored in SI; this is how it is written and read. */
export const UNIT_SYSTEMS = ['metric', 'US'] as const;
/** Reads the name of a system; the two are all there are. */
export const unitSystem = z.enum(UNIT_SYSTEMS);
/** One of `UNIT_SYSTEMS`. It never changes what is stored or planned. */
export type UnitSystem = z.infer<typeof unitSystem>;

/** A length as it was typed, with what it comes to: shown again as it was typed, reckoned with in millimetres. */
export const typedLength = z.strictObject({ typed: z.string(), mm: z.number().min(0) });
/** A length once read; where the two disagree, `mm` counts. */
export type TypedLength = z.infer<typeof typedLength>;
