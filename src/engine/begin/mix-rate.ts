import { ageRate } from '../cure/age.ts';

/** On a day of this temperature a piece can be stripped so many minutes after it is poured. */
export interface StripTime {
  celsius: number;
  minutes: number;
}

/** What two days say of a mix, or which of the answers is at fault and why, in plain words. */
export type MixRate =
  | { ok: true; activationKelvin: number; demouldMinutes: number }
  | { ok: false; at: 'coldCelsius' | 'coldMinutes'; reason: string };

const ZERO_CELSIUS_KELVIN = 273.15;
/** Five times what was measured for mortars (4090 to 7220 K, Barnett et al. 2006): steeper is a slip of the pen. */
const STEEPEST_KELVIN = 25_000;
/** Less than this over a whole minute is not there: the activation is rounded to whole kelvin. */
const TOLERANCE_MINUTES = 0.05;

const WARMER = 'The cold day has to be colder than the warm one.';
const SLOWER = 'It can be stripped no sooner on the cold day than on the warm one. Check both.';
const STEEP = 'That is far longer than on the warm day, for so few degrees. Check both days.';

/**
 * How a mix gains age, from the minutes until it can be stripped on a cold and on a warm day: `activationKelvin` of
 * the Arrhenius form and the minutes at `referenceCelsius` that both days are worth, rounded up so that neither day's
 * piece counts as ready before it was. Source of the form: ASTM C1074, equivalent age, eq 2 (see `ageRate`); no
 * published constant fits fast-setting mortar, so what comes out is a guess until the yard confirms it, and for planning
 * only. Refuses, with the figure at fault, days that are not a cold and a warm one, a cold day that is the quicker
 * one, and a step that no mortar makes.
 *
 * Example: 180 minutes at 10 °C and 90 at 20 °C are ln 2 / (1/283.15 - 1/293.15) = 5753 K: `mixRate({ celsius: 10,
 * minutes: 180 }, { celsius: 20, minutes: 90 }, 20)` is `{ ok: true, activationKelvin: 5753, demouldMinutes: 90 }`.
 */
export const mixRate = (cold: StripTime, warm: StripTime, referenceCelsius: number): MixRate => {
  if (cold.celsius >= warm.celsius) return { ok: false, at: 'coldCelsius', reason: WARMER };
  if (cold.minutes < warm.minutes) return { ok: false, at: 'coldMinutes', reason: SLOWER };
  const inverse = ({ celsius }: StripTime) => 1 / (celsius + ZERO_CELSIUS_KELVIN);
  const activationKelvin = Math.round(Math.log(cold.minutes / warm.minutes) / (inverse(cold) - inverse(warm)));
  if (activationKelvin > STEEPEST_KELVIN) return { ok: false, at: 'coldMinutes', reason: STEEP };
  const atReference = [cold, warm].map(
    ({ celsius, minutes }) => minutes * ageRate(celsius, activationKelvin, referenceCelsius),
  );
  return { ok: true, activationKelvin, demouldMinutes: Math.ceil(Math.max(...atReference) - TOLERANCE_MINUTES) };
};
