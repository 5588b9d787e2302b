import { z } from 'zod';
import { weekday } from './time.ts';

/** How a yard reads its figures, beside its units: the money it pays in (ISO 4217) and the day its week starts on. */
export const yardHabits = z.strictObject({
  currency: z.string().regex(/^[A-Z]{3}$/, 'A currency is three letters, as in EUR.'),
  weekStart: weekday,
});
/** A yard's habits once read; they change what pages show and no plan. */
export type YardHabits = z.infer<typeof yardHabits>;
