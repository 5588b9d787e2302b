import { z } from 'zod';
import { amount, id, positive, whole } from './number.ts';
import { date } from './time.ts';

/** Something bought and used up. With `stickMm` it comes in lengths that are cut. `unit` is what quantities count. */
export const material = z.strictObject({
  id,
  name: z.string(),
  unit: z.string(),
  onHand: amount,
  pack: positive.default(1),
  leadDays: whole.optional(),
  minimum: amount.default(0),
  unitPrice: amount.optional(),
  supplier: z.string().optional(),
  shelfLifeDays: whole.optional(),
  stickMm: positive.optional(),
  kerfMm: amount.default(0),
});
export type Material = z.infer<typeof material>;

/** Bought already, there from 00:00 of `on`; a past date means today. */
export const incoming = z.strictObject({ material: id, quantity: amount, on: date });

export const materialQuantity = z.strictObject({ material: id, quantity: amount });
export type MaterialQuantity = z.infer<typeof materialQuantity>;

/** Pieces cut from sticks of a material. */
export const cut = z.strictObject({ material: id, lengthMm: positive, count: whole });
export type Cut = z.infer<typeof cut>;
