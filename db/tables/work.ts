import { integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import type { TaskKind } from '../../shared/work.ts';
import { dates, neverNegative, position } from './limits.ts';

const hours = () => ({
  start: text().notNull(),
  end: text().notNull(),
  crew: integer().notNull(),
  allows: text({ mode: 'json' }).$type<TaskKind[]>().notNull(),
});

/** Hours that repeat. */
export const workWindows = sqliteTable(
  'workWindows',
  {
    id: integer().primaryKey({ autoIncrement: true }),
    position: position(),
    rule: text().notNull(),
    from: text().notNull(),
    until: text(),
    ...hours(),
  },
  (t) => [...dates([t.from, t.until]), ...neverNegative([t.crew])],
);

/** Dates on which no repeating hours open. */
export const closedDays = sqliteTable(
  'closedDays',
  { id: integer().primaryKey({ autoIncrement: true }), position: position(), date: text().notNull() },
  (t) => dates([t.date]),
);

/** One-off hours. */
export const extraWindows = sqliteTable(
  'extraWindows',
  { id: integer().primaryKey({ autoIncrement: true }), position: position(), date: text().notNull(), ...hours() },
  (t) => [...dates([t.date]), ...neverNegative([t.crew])],
);
