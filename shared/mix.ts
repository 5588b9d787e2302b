import { z } from 'zod';
import { materialQuantity } from './material.ts';
import { amount, celsius, id, positive, whole } from './number.ts';

/** A mix: what a bag places, how long it can be worked, and how it gains age at its reference temperature. */
export const mix = z.strictObject({
  id,
  name: z.string(),
  yieldKgPerBag: positive,
  bagStep: positive.default(1),
  maxBags: positive,
  crew: whole.default(1),
  mixMinutes: whole,
  workingMinutes: whole,
  washMinutes: whole.default(0),
  attendMinutes: whole.default(0),
  demouldMinutes: whole,
  cureHours: amount,
  referenceCelsius: celsius.default(20),
  activationKelvin: amount.default(5000),
  minCelsius: z.number().optional(),
  maxCelsius: z.number().optional(),
  protectHours: amount.default(0),
  perBag: z.array(materialQuantity),
});
export type Mix = z.infer<typeof mix>;
