import { z } from 'zod';
import { id } from './number.ts';
import { instant } from './time.ts';

/** What a piece is when it comes out of its mould: "mend" can still be patched, "scrap" is lost. */
export const CAME_OUT = ['good', 'mend', 'scrap'] as const;
/** One of `CAME_OUT`. Only "good" makes a finished piece. */
export type CameOut = (typeof CAME_OUT)[number];

/**
 * Stripped and kept aside to be mended: until then it is no finished piece and for no order. `mould` is what it came out
 * of, as that was called then; its cure counts from `filledAt`.
 */
export const pieceToMend = z.strictObject({
  casting: id,
  mould: id,
  filledAt: instant,
  strippedAt: instant,
  reason: z.string().min(1, 'is empty').optional(),
});
