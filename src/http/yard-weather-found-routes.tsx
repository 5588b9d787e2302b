import { type Context, Hono } from 'hono';
import { englishOf } from '../../shared/english.ts';
import type { WeatherDay } from '../../shared/temperature.ts';
import type { WeatherTable } from '../../shared/weather-table.ts';
import { WeatherFilePage } from '../../views/yard/weather-file-page.tsx';
import { FORECAST, FORECAST_OFF, FORECAST_ON } from '../../views/yard/weather-forecast.tsx';
import { WEATHER, WEATHER_FILE } from '../../views/yard/weather-from-file.tsx';
import { WeatherPage } from '../../views/yard/weather-page.tsx';
import { done, type UseCaseContext } from '../usecases/core/context.ts';
import {
  choiceBy,
  choiceTyped,
  tableCarried,
  type WeatherChoice,
  weatherOfTable,
  weatherUpload,
} from '../usecases/files/weather-file.ts';
import { dateReading } from '../usecases/plan/date-reading.ts';
import type { FormState } from '../usecases/plan/save-edit.ts';
import { comingDays } from '../usecases/yard/coming-days.ts';
import { askForecast, placeTyped, switchForecast } from '../usecases/yard/forecast.ts';
import { showWeather, weatherFields } from '../usecases/yard/show-weather.ts';
import { errorsByField, readForm } from './form.ts';
import { atOnce, formRoute } from './form-route.tsx';
import { page } from './page.tsx';
import type { Screens } from './screens.ts';
import { uploadedFile } from './uploaded-file.ts';

const FRAME = { title: 'Weather of the coming days', at: 'yard' } as const;

/** The page of the weather in a state of its forms. */
const weatherIn = async (context: UseCaseContext, state: FormState) => {
  const model = await showWeather(context);
  return {
    frame: { ...FRAME, yardName: model.yardName },
    content: <WeatherPage {...{ model, state }} notice={null} />,
  };
};

/** The form with these days filled in. Nothing is saved. */
const filledIn = async (c: Context, context: UseCaseContext, days: readonly WeatherDay[]) => {
  const model = await showWeather(context);
  const state: FormState = { typed: weatherFields(model, days), errors: {}, effect: null };
  const content = <WeatherPage {...{ model, state }} notice={null} filledIn={days.length} />;
  return page(c, { ...FRAME, yardName: model.yardName }, content);
};

/** The page of the weather says at a field why nothing was filled in. */
const notRead = async (c: Context, context: UseCaseContext, field: string, message: string) => {
  const { frame, content } = await weatherIn(context, { typed: null, errors: { [field]: message }, effect: null });
  return page(c, frame, content, { status: 422 });
};

interface Read {
  table: WeatherTable;
  choice: WeatherChoice;
}

/** The days of the file, or the question which column is which. */
const byColumns = async (c: Context, context: UseCaseContext, { table, choice }: Read) => {
  const how = await dateReading(context);
  const monthFirst = (how.english ?? englishOf(how.system)) === 'US';
  const days = weatherOfTable(table, choice, { dates: comingDays(how.today), monthFirst });
  if (days.ok) return filledIn(c, context, days.value);
  const { yardName } = await showWeather(context);
  const content = <WeatherFilePage {...{ table, choice }} errors={errorsByField(days.faults)} />;
  return page(c, { ...FRAME, yardName }, content, { status: 422 });
};

const takeFile = async (c: Context, context: UseCaseContext) => {
  const { system, today } = await dateReading(context);
  const isUpload = c.req.header('content-type')?.startsWith('multipart/form-data') ?? false;
  if (!isUpload) {
    const fields = await readForm(c);
    const table = tableCarried(fields);
    if (!table) return notRead(c, context, 'file', 'Choose the file once more.');
    return byColumns(c, context, { table, choice: choiceTyped(fields, table, system) });
  }
  const bytes = await uploadedFile(c, 'file');
  if (!bytes) return notRead(c, context, 'file', 'No file was chosen. Choose one, then read it.');
  const table = weatherUpload(bytes, comingDays(today));
  if (!table.ok) return notRead(c, context, 'file', table.faults[0]?.message ?? 'The file cannot be read.');
  return byColumns(c, context, { table: table.value, choice: choiceBy(table.value, system) });
};

const ask = async (c: Context, context: UseCaseContext) => {
  const days = await askForecast(context);
  if (days.ok) return filledIn(c, context, days.value);
  return notRead(c, context, 'forecast', days.faults[0]?.message ?? 'The forecast did not answer.');
};

const switched = (path: string, isOn: boolean) => ({
  path,
  show: (_c: Context, context: UseCaseContext, state: FormState) => weatherIn(context, state),
  save: atOnce(isOn ? placeTyped : () => done(null), switchForecast),
  next: () => WEATHER,
});

/** Weather out of a file or a forecast fills in the form of the weather, which alone saves. */
export const yardWeatherFoundRoutes = (screens: Screens): Hono =>
  new Hono()
    .post(WEATHER_FILE, (c) => takeFile(c, screens.context()))
    .post(FORECAST, (c) => ask(c, screens.context()))
    .route('/', formRoute(screens, switched(FORECAST_ON, true)))
    .route('/', formRoute(screens, switched(FORECAST_OFF, false)));
