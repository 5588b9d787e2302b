import { z } from 'zod';

/** What people in the yard measure with. Everything is stored in SI; this is how it is written and read. */
export const UNIT_SYSTEMS = ['metric', 'US'] as const;
export const unitSystem = z.enum(UNIT_SYSTEMS);
export type UnitSystem = z.infer<typeof unitSystem>;

/** A length as it was typed, with what it comes to: shown again as it was typed, reckoned with in millimetres. */
export const typedLength = z.strictObject({ typed: z.string(), mm: z.number().min(0) });
export type TypedLength = z.infer<typeof typedLength>;
