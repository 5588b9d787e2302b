import { z } from 'zod';
import { cut, materialQuantity } from './material.ts';
import { amount, id, whole, wholePositive } from './number.ts';

/** One kind of piece: its mix, mass and the minutes of work it asks for. */
export const casting = z.strictObject({
  id,
  name: z.string(),
  mix: id,
  kg: amount,
  fillMinutes: wholePositive,
  stripMinutes: whole,
  stripCrew: whole.default(1),
  cleanMinutes: whole,
  prepMinutes: whole,
  rackSpaces: whole.default(1),
  perPiece: z.array(materialQuantity),
  cuts: z.array(cut),
});
export type Casting = z.infer<typeof casting>;
