import { integer, real, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { dates, position } from './limits.ts';

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
