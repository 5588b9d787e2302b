import type { Hono } from 'hono';
import { WEATHER } from '../../views/yard/weather-from-file.tsx';
import { WeatherPage } from '../../views/yard/weather-page.tsx';
import { editWeather } from '../usecases/yard/edit-weather.ts';
import { showWeather } from '../usecases/yard/show-weather.ts';
import { effectFirst, type FormRoute, formPage } from './form-route.tsx';
import { doneNotice } from './notice.ts';
import type { Screens } from './screens.ts';

const weather: FormRoute<null> = {
  path: WEATHER,
  save: effectFirst(editWeather),
  next: () => WEATHER,
  show: async (c, context, state) => {
    const model = await showWeather(context);
    const frame = { title: 'Weather of the coming days', at: 'yard', yardName: model.yardName } as const;
    return { frame, content: <WeatherPage model={model} state={state} notice={await doneNotice(c, context)} /> };
  },
};

/** What is expected of the coming days. */
export const yardWeatherRoutes = (screens: Screens): Hono => formPage(screens, weather);
