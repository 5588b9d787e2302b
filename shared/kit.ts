import { z } from 'zod';
import { cut, materialQuantity } from './material.ts';
import { id, perOne, whole } from './number.ts';

/**
 * What is sold as one thing: pieces, parts, cuts (pins) and the minutes one person packs it for. Amounts are for one
 * kit; 0 minutes: handed over unpacked (R11).
 */
export const kit = z.strictObject({
  id,
  name: z.string(),
  pieces: z.array(z.strictObject({ casting: id, count: perOne })),
  parts: z.array(materialQuantity),
  cuts: z.array(cut),
  packMinutes: whole.default(0),
});
/** A kit once read: every default filled in. */
export type Kit = z.infer<typeof kit>;
