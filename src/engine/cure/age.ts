import type { Mix } from '../../../shared/mix.ts';
import type { Minute } from '../../../shared/time.ts';
import type { Climate } from './climate.ts';

/** How one mix gains age at its reference temperature through the yard's expected temperatures. */
export interface Ageing {
  /** Minutes at the reference temperature that are worth the time from one instant to another. */
  ageBetween(from: Minute, to: Minute): number;
  /** First whole minute at which that age is reached; Infinity if it never is. */
  whenAged(from: Minute, ageMinutes: number): Minute;
}

const ZERO_CELSIUS_KELVIN = 273.15;
/** Less than this is taken as reached: sums of fractions are not exact. */
const TOLERANCE_MINUTES = 1e-6;
/** Keeps figures finite where a yard file gives temperatures near absolute zero; at any real one the rate is below 100. */
const HIGHEST_RATE = 1e6;

/**
 * How many minutes at the reference temperature one minute at `celsius` is worth: exp(-Q (1/T - 1/Tref)), in kelvin.
 * Source: ASTM C1074, equivalent age, eq 2, with Q = `activationKelvin` = activation energy / gas constant.
 * For planning only: C1074 wants the strength-maturity line of the same mix, and no piece is certified by it.
 *
 * Example: `ageRate(10, 5000, 20)` is 0.5475: at 10 °C a mix needs nearly twice its time at 20 °C.
 */
export const ageRate = (celsius: number, activationKelvin: number, referenceCelsius: number): number => {
  const kelvin = celsius + ZERO_CELSIUS_KELVIN;
  const referenceKelvin = referenceCelsius + ZERO_CELSIUS_KELVIN;
  return Math.min(HIGHEST_RATE, Math.exp(-activationKelvin * (1 / kelvin - 1 / referenceKelvin)));
};

const lastAtOrBelow = (values: Float64Array, value: number): number => {
  let [low, high] = [0, values.length - 1];
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (values[middle]! <= value) low = middle;
    else high = middle - 1;
  }
  return low;
};

/**
 * The ageing of a mix in a climate: equivalent age (ASTM C1074, see `ageRate`), for planning only, never to certify a
 * piece. Where no temperature is expected the mix is at its own reference temperature. The age at every step is summed up
 * once; a question is then one or two searches and no loop over days.
 *
 * Example: always at 10 °C, with Q 5000 K and 20 °C as reference, 75 / 0.5475 = 136.98 minutes: `ageingOf({
 * activationKelvin: 5000, referenceCelsius: 20 }, { steps: [{ from: -Infinity, celsius: 10 }] }).whenAged(0, 75)` is
 * 137.
 */
export const ageingOf = (
  mix: Pick<Mix, 'activationKelvin' | 'referenceCelsius'>,
  climate: Pick<Climate, 'steps'>,
): Ageing => {
  const { steps } = climate;
  const { activationKelvin, referenceCelsius } = mix;
  const from = Float64Array.from(steps, (step) => step.from);
  const rate = Float64Array.from(steps, ({ celsius }) =>
    ageRate(celsius ?? referenceCelsius, activationKelvin, referenceCelsius),
  );
  // Age at the start of every step, counted from the start of the second: the first has none.
  const age = new Float64Array(steps.length);
  age[0] = Number.NEGATIVE_INFINITY;
  for (let i = 2; i < steps.length; i++) age[i] = age[i - 1]! + (from[i]! - from[i - 1]!) * rate[i - 1]!;

  const ageAt = (minute: Minute, step: number): number =>
    step === 0 ? (minute - (from[1] ?? 0)) * rate[0]! : age[step]! + (minute - from[step]!) * rate[step]!;
  const ageBetween = (start: Minute, end: Minute): number => {
    const [first, last] = [lastAtOrBelow(from, start), lastAtOrBelow(from, end)];
    return first === last ? (end - start) * rate[first]! : ageAt(end, last) - ageAt(start, first);
  };
  const whenAged = (start: Minute, ageMinutes: number): Minute => {
    const needed = ageMinutes - TOLERANCE_MINUTES;
    if (needed <= 0) return start;
    const first = lastAtOrBelow(from, start);
    const begun = ageAt(start, first);
    const aim = begun + needed;
    let step = Math.max(first, lastAtOrBelow(age, aim));
    // Where the aim is the age at the start of a step, it was reached at the end of the last one that gained any.
    while (step > first && age[step]! >= aim) step--;
    const whole =
      step === first
        ? start + Math.ceil(needed / rate[step]!)
        : Math.ceil(from[step]! + (aim - age[step]!) / rate[step]!);
    // Dividing can be a hair off where the sum is not: settle it by the sum itself.
    if (ageBetween(start, whole) < needed) return whole + 1;
    return whole > start && ageBetween(start, whole - 1) >= needed ? whole - 1 : whole;
  };
  return { ageBetween, whenAged };
};
