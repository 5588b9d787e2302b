import type { Mix } from '../../../shared/mix.ts';
import type { TemperatureStep } from '../../../shared/temperature.ts';
import type { Minute } from '../../../shared/time.ts';
import type { UnitSystem } from '../../../shared/units.ts';
import type { Calendar } from '../../engine/calendar/calendar.ts';
import { climateOf } from '../../engine/cure/climate.ts';
import { temperatureText } from '../../engine/units/temperature.ts';

/**
 * A day that is colder than this on average has frost in a clear night. ACI 306R calls 4 °C (40 °F) cold weather; a mean says
 * nothing of the night itself, so it is a little more. In °C.
 */
const COLD_MEAN = 5;
/** Nobody says for how long a mix is kept from frost: the first two nights. In hours. */
const FIRST_NIGHTS = 48;

/** How cold it is expected to be on average in the first nights after a pour, in the yard's units, where that may be frost; else null. */
export const coldNightsAfter = (
  { temperatures, mix, lastFill }: { temperatures: TemperatureStep[]; mix: Mix; lastFill: Minute },
  calendar: Calendar,
  system: UnitSystem,
): string | null => {
  const climate = climateOf(temperatures, calendar);
  const until = lastFill + (mix.protectHours || FIRST_NIGHTS) * 60;
  const means: number[] = [];
  for (let day = calendar.dayOf(lastFill); day <= calendar.dayOf(until); day++)
    means.push(climate.celsiusOn(day) ?? Number.POSITIVE_INFINITY);
  const coldest = Math.min(...means);
  return coldest < COLD_MEAN ? temperatureText(coldest, system) : null;
};
