import { sql } from 'drizzle-orm';
import { check, integer, real, sqliteTable, text, unique } from 'drizzle-orm/sqlite-core';
import { dates, neverNegative, position } from './limits.ts';

export const temperatureSteps = sqliteTable(
  'temperatureSteps',
  {
    id: integer().primaryKey({ autoIncrement: true }),
    position: position(),
    from: text().notNull(),
    celsius: real().notNull(),
  },
  (t) => dates([t.from]),
);

/** What is expected of single dates, by the hour: °C, km/h, percent, mm. */
export const weatherDays = sqliteTable(
  'weatherDays',
  {
    id: integer().primaryKey({ autoIncrement: true }),
    position: position(),
    date: text().notNull(),
    minCelsius: real().notNull(),
    maxCelsius: real().notNull(),
    windKmh: real(),
    humidityPercent: real(),
    rainMm: real(),
  },
  (t) => [
    ...dates([t.date]),
    unique('weather_of_a_date').on(t.date),
    check('lowest_first', sql`${t.minCelsius} <= ${t.maxCelsius}`),
    check('humidity_percent', sql`${t.humidityPercent} <= 100`),
    ...neverNegative([t.windKmh, t.humidityPercent, t.rainMm]),
  ],
);
