import { z } from 'zod';
import { materialQuantity } from './material.ts';
import { amount, atOnce, celsius, hours, id, positive, whole, wholePositive } from './number.ts';

/** The most hours and minutes of `wetCure`, four weeks and a day: more is a slip of the hand. */
export const MOST_WET = { hours: 672, minutes: 1440 } as const;

/** For how many hours after the strip pieces are kept wet, and how many minutes of a session that takes one person (R1). */
const wetCure = z.strictObject({
  hours: wholePositive.max(MOST_WET.hours, `is more than ${MOST_WET.hours}`),
  minutes: wholePositive.max(MOST_WET.minutes, `is more than ${MOST_WET.minutes.toLocaleString('en')}`),
});

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
  wetCure: wetCure.optional(),
  perBag: z.array(materialQuantity),
});
/** A mix once read: every default filled in (whole bags, one person, 20 °C, 5000 K, no protection from cold);
 * no minutes to keep pieces wet where `wetCure` is left out. */
export type Mix = z.infer<typeof mix>;
