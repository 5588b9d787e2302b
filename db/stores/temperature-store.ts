import { asc, eq, inArray } from 'drizzle-orm';
import { type TemperatureStep, USUAL_HOURS, type Weather, type WeatherDay } from '../../shared/temperature.ts';
import { temperatureSteps as table, weatherDays } from '../tables/temperature.ts';
import { yards } from '../tables/yard.ts';
import type { Tx } from '../transaction.ts';
import { insertAll, nextPosition, present } from './rows.ts';

/** A step (°C from 00:00 of a date) with the number it is known by. */
export type StoredStep = TemperatureStep & { id: number };

/** Each with its id, in the order of the yard file. */
export const temperatureSteps = (tx: Tx): Promise<StoredStep[]> =>
  tx.select({ id: table.id, from: table.from, celsius: table.celsius }).from(table).orderBy(asc(table.position));

/** Puts steps last in the list, which need not be in the order of their dates. */
export const addSteps = async (tx: Tx, steps: readonly TemperatureStep[]): Promise<void> => {
  const first = await nextPosition(tx, table);
  await insertAll(
    tx,
    table,
    steps.map(({ from, celsius }, index) => ({ from, celsius, position: first + index })),
  );
};

/** A step anew, in its place. */
export const updateStep = async (tx: Tx, id: number, step: TemperatureStep): Promise<void> => {
  await tx.update(table).set(step).where(eq(table.id, id));
};

/** Takes steps out; none at all is allowed. */
export const removeSteps = async (tx: Tx, ids: readonly number[]): Promise<void> => {
  if (ids.length > 0) await tx.delete(table).where(inArray(table.id, [...ids]));
};

type Hours = Omit<Weather, 'days'>;

const daysSaid = async (tx: Tx): Promise<WeatherDay[]> => {
  const rows = await tx.select().from(weatherDays).orderBy(asc(weatherDays.position));
  return rows.map(({ id: _id, position: _position, ...day }) => present(day));
};

/** What is said of single days, in the order of the yard file, and when days are coldest and warmest. */
export const weatherSaid = async (tx: Tx): Promise<Weather> => {
  const [hours = USUAL_HOURS] = await tx.select({ coldestAt: yards.coldestAt, warmestAt: yards.warmestAt }).from(yards);
  return { ...hours, days: await daysSaid(tx) };
};

/** The weather as the yard file has it, with the hours of the yard's row; undefined where nothing is said of it. */
export const weatherOf = async (tx: Tx, { coldestAt, warmestAt }: Hours): Promise<Weather | undefined> => {
  const days = await daysSaid(tx);
  const isUsual = coldestAt === USUAL_HOURS.coldestAt && warmestAt === USUAL_HOURS.warmestAt;
  return days.length === 0 && isUsual ? undefined : { coldestAt, warmestAt, days };
};

/** The rows of a yard's weather. */
export const weatherRows = (days: readonly WeatherDay[]) =>
  days.map(({ windKmh = null, humidityPercent = null, rainMm = null, ...day }) => ({
    ...{ ...day, windKmh, humidityPercent, rainMm },
  }));

/** When days are coldest and warmest; usual where a file does not say. */
export const weatherHours = ({ coldestAt, warmestAt }: Hours = USUAL_HOURS) => ({ coldestAt, warmestAt });

/** Puts this weather in place of what was said of these dates; of `dates` that it does not name nothing is said any more. */
export const setWeather = async (tx: Tx, { days, ...hours }: Weather, dates: readonly string[]): Promise<void> => {
  await tx.update(yards).set(hours);
  if (dates.length > 0) await tx.delete(weatherDays).where(inArray(weatherDays.date, [...dates]));
  const first = await nextPosition(tx, weatherDays);
  await insertAll(
    tx,
    weatherDays,
    weatherRows(days).map((row, index) => ({ ...row, position: first + index })),
  );
};
