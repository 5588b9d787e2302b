import type { Weather } from '../../../shared/temperature.ts';
import { dateOfDay, type Minute } from '../../../shared/time.ts';
import type { Calendar } from '../../engine/calendar/calendar.ts';
import { type Climate, stepsTouched } from '../../engine/cure/climate.ts';
import { DRIES_FAST, evaporation } from '../../engine/cure/evaporation.ts';

/** How fast the surface of a batch dries: `soon` it has to be covered, or `atOnce`. */
export type Drying = keyof typeof DRIES_FAST;

/** How long a surface lies bare after it was filled, at the most that is looked at. In minutes. */
const BARE_MINUTES = 60;

/**
 * Whether what is filled between two minutes dries fast, by the wind and the humidity of its day and by the hottest hour from
 * then to an hour later; the mortar is taken to be as warm as the air. Null where it does not, or where nobody said.
 */
export const dryingOf = (
  { weather, filled }: { weather: Weather | undefined; filled: { from: Minute; to: Minute } },
  climate: Climate,
  calendar: Calendar,
): Drying | null => {
  const date = dateOfDay(calendar.dayOf(filled.from));
  const day = weather?.days.find((one) => one.date === date);
  if (day?.windKmh === undefined || day.humidityPercent === undefined) return null;
  const { windKmh, humidityPercent } = day;
  const lost = stepsTouched(climate, filled.from, filled.to + BARE_MINUTES).map(({ celsius }) =>
    celsius === null ? 0 : evaporation({ mortarCelsius: celsius, airCelsius: celsius, humidityPercent, windKmh }),
  );
  const most = Math.max(...lost);
  if (most >= DRIES_FAST.atOnce) return 'atOnce';
  return most >= DRIES_FAST.soon ? 'soon' : null;
};
