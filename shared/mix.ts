import { z } from 'zod';
import { materialQuantity } from './material.ts';
import { amount, atOnce, celsius, hours, id, positive, whole } from './number.ts';

/**
 * A mix: what a bag places (kg of wet mass), how long it can be worked, and how it gains age at its reference
 * temperature (R3, R4, R7 to R9). `workingMinutes`, `demouldMinutes` and `cureHours` are at `referenceCelsius`; heat
 * shortens all three, and cold lengthens them, by `activationKelvin` (ASTM C1074). `maxBags` is a multiple of
 * `bagStep`.
 */
export const mix = z.strictObject({
  id,
  name: z.string(),
  yieldKgPerBag: positive,
  bagStep: positive.default(1),
  maxBags: positive,
  crew: atOnce.default(1),
  mixMinutes: whole,
  workingMinutes: whole,
  washMinutes: whole.default(0),
  attendMinutes: whole.default(0),
  demouldMinutes: whole,
  cureHours: hours,
  referenceCelsius: celsius.default(20),
  activationKelvin: amount.default(5000),
  minCelsius: celsius.optional(),
  maxCelsius: celsius.optional(),
  protectHours: hours.default(0),
  perBag: z.array(materialQuantity),
});
/** A mix once read: every default filled in (whole bags, one person, 20 °C, 5000 K, no protection from cold). */
export type Mix = z.infer<typeof mix>;
