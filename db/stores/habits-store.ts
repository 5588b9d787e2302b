import type { ForecastPlace } from '../../shared/forecast.ts';
import { FLOAT_DAYS, type YardHabits } from '../../shared/habits.ts';
import { yardHabits } from '../tables/habits.ts';
import type { Tx } from '../transaction.ts';
import { present } from './rows.ts';

const UNSAID = { currency: 'EUR', weekStart: 'MO', floatDays: FLOAT_DAYS, spares: null, demo: false } as const;
/** No forecast is asked for. */
export const NO_FORECAST = { forecastLatitude: null, forecastLongitude: null, forecastContact: null } as const;

const rowOf = async (tx: Tx) => {
  const [row] = await tx.select().from(yardHabits);
  return row ?? { id: 1, ...UNSAID, ...NO_FORECAST };
};

/** The yard's money and week, and its float: euros from Monday on and a working day until it says otherwise. */
export const habitsOfYard = async (tx: Tx): Promise<YardHabits> => {
  const { currency, weekStart, floatDays, spares } = await rowOf(tx);
  return { currency, weekStart, floatDays, ...present({ spares }) };
};

/** What is there is the demo yard, and nobody's own. */
export const isDemo = async (tx: Tx): Promise<boolean> => (await rowOf(tx)).demo;

const write = async (tx: Tx, set: Partial<typeof yardHabits.$inferInsert>): Promise<void> => {
  await tx
    .insert(yardHabits)
    .values({ id: 1, ...UNSAID, ...set })
    .onConflictDoUpdate({ target: yardHabits.id, set });
};

/** Sets the yard's money (three letters, ISO 4217), the day its week starts on and its float, those that are named; whether it is the demo stays. */
export const setHabits = (tx: Tx, habits: Partial<YardHabits>): Promise<void> => write(tx, habits);

/** Says whether what is there is the demo yard; money and week stay. */
export const setDemo = (tx: Tx, demo: boolean): Promise<void> => write(tx, { demo });

/** For which place a forecast is asked; null while none is. */
export const forecastPlace = async (tx: Tx): Promise<ForecastPlace | null> => {
  const { forecastLatitude: latitude, forecastLongitude: longitude, forecastContact: contact } = await rowOf(tx);
  return latitude === null || longitude === null || contact === null ? null : { latitude, longitude, contact };
};

/** From now on a forecast is asked for a place, or none any more. */
export const setForecastPlace = (tx: Tx, place: ForecastPlace | null): Promise<void> =>
  write(
    tx,
    place
      ? {
          ...{ forecastLatitude: place.latitude, forecastLongitude: place.longitude, forecastContact: place.contact },
        }
      : NO_FORECAST,
  );
