import type { ForecastAnswer } from '../../../shared/forecast.ts';
import type { WeatherDay } from '../../../shared/temperature.ts';
import { clockIn, clockMinutes } from '../../../shared/time.ts';
import { todayIn } from '../book/today-in.ts';

type Step = ForecastAnswer['properties']['timeseries'][number];

/** m/s in km/h, exact. */
const KMH = 3.6;
/** A day of which the forecast says less would have its lowest or its highest in what is missing. In minutes of its clock. */
const FIRST_BY = 6 * 60;
const LAST_FROM = 15 * 60;

const present = (values: readonly (number | undefined)[]): number[] => values.filter((one) => one !== undefined);

/** What falls after a step: in the hour to come, or the six where nothing is said by the hour. */
const rainAfter = ({ data }: Step): number | undefined =>
  data.next_1_hours?.details?.precipitation_amount ?? data.next_6_hours?.details.precipitation_amount;

const extremes = (steps: readonly Step[]): number[] =>
  steps.flatMap(({ data: { instant, next_1_hours, next_6_hours } }) => [
    instant.details.air_temperature,
    ...(next_1_hours || !next_6_hours
      ? []
      : present([next_6_hours.details.air_temperature_min, next_6_hours.details.air_temperature_max])),
  ]);

const stepsByDate = (steps: readonly Step[], timeZone: string): ReadonlyMap<string, Step[]> => {
  const byDate = new Map<string, Step[]>();
  for (const step of steps) {
    const date = todayIn({ yard: { timeZone, now: step.time } });
    byDate.set(date, [...(byDate.get(date) ?? []), step]);
  }
  return byDate;
};

/**
 * The days that a forecast says enough of, from the early morning to the afternoon of the zone: lowest and highest in °C, the
 * strongest wind in km/h, the driest air in percent, all rain in mm. For planning only.
 *
 * Example: of a forecast that begins at 9:00 the first day is left out, since its coldest hour is over.
 */
export const daysOfForecast = (
  { properties: { timeseries } }: ForecastAnswer,
  timeZone: string,
  dates: readonly string[],
): WeatherDay[] => {
  const byDate = stepsByDate(timeseries, timeZone);
  return dates.flatMap((date): WeatherDay[] => {
    const steps = byDate.get(date) ?? [];
    const clocks = steps.map(({ time }) => clockMinutes(clockIn(timeZone, time)));
    if (Math.min(...clocks) > FIRST_BY || Math.max(...clocks) < LAST_FROM) return [];
    const temperatures = extremes(steps);
    const winds = present(steps.map(({ data }) => data.instant.details.wind_speed));
    const damp = present(steps.map(({ data }) => data.instant.details.relative_humidity));
    const rain = present(steps.map(rainAfter));
    return [
      {
        ...{ date, minCelsius: Math.min(...temperatures), maxCelsius: Math.max(...temperatures) },
        ...(winds.length > 0 ? { windKmh: Number((Math.max(...winds) * KMH).toFixed(1)) } : {}),
        ...(damp.length > 0 ? { humidityPercent: Math.round(Math.min(...damp)) } : {}),
        ...(rain.length > 0 ? { rainMm: Number(rain.reduce((sum, mm) => sum + mm, 0).toFixed(1)) } : {}),
      },
    ];
  });
};
