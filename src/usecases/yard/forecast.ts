import { forecastPlace, setForecastPlace } from '../../../db/stores/habits-store.ts';
import { zoneOfYard } from '../../../db/stores/yard-store.ts';
import { type ForecastPlace, forecastPlace as placeShape } from '../../../shared/forecast.ts';
import type { WeatherDay } from '../../../shared/temperature.ts';
import { daysOfForecast } from '../../engine/cure/forecast.ts';
import { done, type Outcome, refuse, today, type UseCaseContext } from '../core/context.ts';
import { type Changed, changing } from '../plan/changing.ts';
import type { FormFields } from '../typed/form-fields.ts';
import { TypedReader } from '../typed/typed-reader.ts';
import { comingDays } from './coming-days.ts';

/** Degrees with a point or a comma: "53.35", "-6,26". */
const DEGREES = /^[-+]?\d{1,3}(?:[.,]\d+)?$/;

const degreesTyped = (reader: TypedReader, name: string, most: number): number => {
  const text = reader.text(name).replace('−', '-');
  const degrees = Number(text.replace(',', '.'));
  if (!DEGREES.test(text) || Math.abs(degrees) > most)
    reader.refuse(name, `Write degrees between -${most} and ${most}, like ${name === 'latitude' ? '53.35' : '-6.26'}.`);
  return degrees;
};

/** The place of a form: all of it is needed. */
export const placeTyped = (fields: FormFields): Outcome<ForecastPlace> => {
  const reader = new TypedReader(fields);
  const [latitude, longitude] = [degreesTyped(reader, 'latitude', 90), degreesTyped(reader, 'longitude', 180)];
  const contact = reader.text('contact');
  if (!placeShape.shape.contact.safeParse(contact).success)
    reader.refuse('contact', 'Write an e-mail address, like you@example.org. The service asks for one.');
  return reader.outcome({ latitude, longitude, contact });
};

/** From now on a forecast can be asked for this place; null: no more. It changes no plan. */
export const switchForecast = (context: UseCaseContext, place: ForecastPlace | null): Promise<Outcome<Changed<null>>> =>
  changing(
    context,
    { kind: 'forecast switched', words: place ? 'Forecast switched on' : 'Forecast switched off' },
    async (tx) => {
      await setForecastPlace(tx, place);
      return done(null);
    },
  );

/** The coming days as the service has them. Nothing is saved, and while it is away the months hold. */
export const askForecast = async (context: UseCaseContext): Promise<Outcome<WeatherDay[]>> => {
  const { place, timeZone } = await context.database.read(async (tx) => ({
    place: await forecastPlace(tx),
    timeZone: await zoneOfYard(tx),
  }));
  if (!place || !context.forecast) return refuse('forecast', 'No forecast is switched on.');
  const answer = await context.forecast(place);
  const days = answer ? daysOfForecast(answer, timeZone, comingDays(today(timeZone, context.now))) : [];
  return days.length > 0
    ? done(days)
    : refuse('forecast', 'The forecast did not answer. The months hold; try again later, or type the days.');
};
