import { z } from 'zod';
import { id, whole, wholePositive } from './number.ts';

const MORE_THAN_ALL = 'is more than there were';

/** Pieces of one casting that came out of one mould, as both were called then: how many, and how many were to mend or scrap. */
const piecesOut = z
  .strictObject({ mould: id, casting: id, of: whole, mend: whole, scrap: whole })
  .refine(({ of, mend, scrap }) => mend + scrap <= of, { path: ['scrap'], error: MORE_THAN_ALL });
/** Pieces of one casting that came out of one mould: how many, and how they were. */
export type PiecesOut = z.infer<typeof piecesOut>;

/** How often something went wrong in so many cases. */
const seen = z
  .strictObject({ bad: whole, of: whole })
  .refine(({ bad, of }) => bad <= of, { path: ['bad'], error: MORE_THAN_ALL });

/** What one supplier brought, or nobody in particular (null): the days by which some came late, one for each. */
const brought = z
  .strictObject({ supplier: z.string().nullable(), of: whole, daysLate: z.array(wholePositive) })
  .refine(({ of, daysLate }) => daysLate.length <= of, { path: ['daysLate'], error: MORE_THAN_ALL });

/** All that a yard's own record says of what goes wrong (yard file, `record`). */
export const yardRecord = z.strictObject({
  pieces: z.array(piecesOut),
  /** Days with work; bad: called off on the day itself or the day before. */
  sessions: seen,
  deliveries: z.array(brought),
});
/** A record once read. */
export type YardRecord = z.infer<typeof yardRecord>;
