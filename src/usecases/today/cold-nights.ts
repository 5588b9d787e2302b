import type { Mix } from '../../../shared/mix.ts';
import type { Minute } from '../../../shared/time.ts';
import type { UnitSystem } from '../../../shared/units.ts';
import { type Climate, stepsTouched } from '../../engine/cure/climate.ts';
import { temperatureSaid } from '../../engine/units/temperature.ts';

/**
 * A day that is colder than this on average has frost in a clear night. ACI 306R calls 4 °C (40 °F) cold weather; a mean says
 * nothing of the night itself, so it is a little more. In °C.
 */
const COLD_MEAN = 5;
/** Where the hour is known: under a clear sky what lies out is some degrees colder than the air (common practice, no source). In °C. */
const COLD_HOUR = 2;
/** Nobody says for how long a mix is kept from frost: the first two nights. In hours. */
const FIRST_NIGHTS = 48;

/** A mean holds for a day at least, of 23 hours too. In minutes. */
const HALF_A_DAY = 720;

/** How cold it is expected to be after a pour, in the yard's units; `byTheHour`: that is the coldest hour, else a day's mean. */
export interface ColdNights {
  celsius: string;
  byTheHour: boolean;
}

/** How cold the first nights after a pour may be, where that may be frost; else null. The coldest of them is told. */
export const coldNightsAfter = (
  { mix, lastFill }: { mix: Mix; lastFill: Minute },
  climate: Climate,
  system: UnitSystem,
): ColdNights | null => {
  const until = lastFill + (mix.protectHours || FIRST_NIGHTS) * 60;
  const cold = stepsTouched(climate, lastFill, until).flatMap(({ celsius, minutes }) => {
    const byTheHour = minutes < HALF_A_DAY;
    return celsius !== null && celsius < (byTheHour ? COLD_HOUR : COLD_MEAN) ? [{ celsius, byTheHour }] : [];
  });
  if (cold.length === 0) return null;
  const { celsius, byTheHour } = cold.reduce((a, b) => (b.celsius < a.celsius ? b : a));
  return { celsius: temperatureSaid(celsius, system), byTheHour };
};
