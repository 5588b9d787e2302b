import { forecastPlace } from '../../../db/stores/habits-store.ts';
import { weatherSaid } from '../../../db/stores/temperature-store.ts';
import type { ForecastPlace } from '../../../shared/forecast.ts';
import type { WeatherDay } from '../../../shared/temperature.ts';
import type { UseCaseContext } from '../core/context.ts';
import { type DayShown, dayField, dayShown } from '../typed/weather-form.ts';
import { comingDays } from './coming-days.ts';
import { showYardFrame, type YardPageHead } from './show-yard-frame.ts';

export interface WeatherModel extends YardPageHead {
  days: readonly (DayShown & { date: string })[];
  /** "HH:MM" */
  coldestAt: string;
  warmestAt: string;
  /** For which place a forecast can be asked; null while that is switched off. */
  forecast: ForecastPlace | null;
}

/** What is expected of the coming days, as their fields show it. */
export const showWeather = async (context: UseCaseContext): Promise<WeatherModel> => {
  const { yardName, today, system } = await showYardFrame(context);
  const [{ days, ...hours }, forecast] = await context.database.read(
    async (tx) => [await weatherSaid(tx), await forecastPlace(tx)] as const,
  );
  const said = new Map(days.map((day) => [day.date, day]));
  const shown = comingDays(today).map((date) => ({ date, ...dayShown(said.get(date), system) }));
  return { yardName, today, system, ...hours, days: shown, forecast };
};

/** The fields of the form with some days anew; all others are as they are shown. */
export const weatherFields = (
  { days, coldestAt, warmestAt, system }: WeatherModel,
  anew: readonly WeatherDay[],
): Record<string, string> => {
  const fields = days.flatMap(({ date, ...shown }) => {
    const found = anew.find((day) => day.date === date);
    const said = found ? dayShown(found, system) : shown;
    return (Object.keys(shown) as (keyof DayShown)[]).map((what) => [dayField(what, date), said[what]]);
  });
  return { ...Object.fromEntries(fields), coldestAt, warmestAt };
};
