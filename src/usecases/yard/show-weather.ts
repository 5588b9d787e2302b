import { weatherSaid } from '../../../db/stores/temperature-store.ts';
import type { UseCaseContext } from '../core/context.ts';
import { type DayShown, dayShown } from '../typed/weather-form.ts';
import { comingDays } from './coming-days.ts';
import { showYardFrame, type YardPageHead } from './show-yard-frame.ts';

export interface WeatherModel extends YardPageHead {
  days: readonly (DayShown & { date: string })[];
  /** "HH:MM" */
  coldestAt: string;
  warmestAt: string;
}

/** What is expected of the coming days, as their fields show it. */
export const showWeather = async (context: UseCaseContext): Promise<WeatherModel> => {
  const { yardName, today, system } = await showYardFrame(context);
  const { days, ...hours } = await context.database.read(weatherSaid);
  const said = new Map(days.map((day) => [day.date, day]));
  const shown = comingDays(today).map((date) => ({ date, ...dayShown(said.get(date), system) }));
  return { yardName, today, system, ...hours, days: shown };
};
