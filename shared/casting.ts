import { z } from 'zod';
import { cut, materialQuantity, sheetCut } from './material.ts';
import { amount, atOnce, id, whole, wholePositive } from './number.ts';

/**
 * One kind of piece: its mix, wet mass in kg, and the minutes of work it asks for (yard file, `castings`).
 * `fillMinutes` is at least 1; `cuts` and `perPiece` are what one piece takes, `sheets` how what comes as sheets is cut for it, `rackSpaces` what it needs while it
 * cures (R8).
 */
export const casting = z.strictObject({
  id,
  name: z.string(),
  mix: id,
  kg: amount,
  fillMinutes: wholePositive,
  stripMinutes: whole,
  stripCrew: atOnce.default(1),
  cleanMinutes: whole,
  prepMinutes: whole,
  rackSpaces: whole.default(1),
  perPiece: z.array(materialQuantity),
  cuts: z.array(cut),
  sheets: z.array(sheetCut).optional(),
});
/** A casting once read: every default filled in (one person strips it, one rack space). */
export type Casting = z.infer<typeof casting>;
