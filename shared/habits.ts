import { z } from 'zod';
import { days } from './number.ts';
import { SPARE_RULES } from './spares.ts';
import { weekday } from './time.ts';

/** Goods are to be there one working day before they are needed, where nobody said otherwise. */
export const FLOAT_DAYS = 1;

/**
 * How a yard reads its figures, beside its units: the money it pays in (ISO 4217), the day its week starts on, and how many
 * working days before they are needed goods are to be there; and when pieces to spare are poured.
 */
export const yardHabits = z.strictObject({
  currency: z.string().regex(/^[A-Z]{3}$/, 'A currency is three letters, as in EUR.'),
  weekStart: weekday,
  floatDays: days.default(FLOAT_DAYS),
  spares: z.enum(SPARE_RULES).optional(),
});
/** A yard's habits once read. But for spares they change what pages show and no plan. */
export type YardHabits = z.infer<typeof yardHabits>;
