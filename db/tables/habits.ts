import { sql } from 'drizzle-orm';
import { check, integer, real, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { SPARE_RULES } from '../../shared/spares.ts';
import { WEEKDAYS } from '../../shared/time.ts';
import { flags, oneOf } from './limits.ts';

/** What the yard file has no place for: money, the start of the week, whether this is the demo, and where a forecast is asked for. One row, or none. */
export const yardHabits = sqliteTable(
  'yardHabits',
  {
    id: integer().primaryKey(),
    currency: text().notNull(),
    weekStart: text({ enum: WEEKDAYS }).notNull(),
    /** Goods are to be there so many working days before they are needed. */
    floatDays: integer().notNull().default(1),
    /** When pieces to spare are poured; empty: as usual. */
    spares: text({ enum: SPARE_RULES }),
    /** The yard is the demo, and nobody's own yet. */
    demo: integer({ mode: 'boolean' }).notNull(),
    /** Where the yard lies, in degrees, and how the service is told who asks it: null while no forecast is asked for. */
    forecastLatitude: real(),
    forecastLongitude: real(),
    forecastContact: text(),
  },
  (t) => [
    check('one_yard_habits', sql`${t.id} = 1`),
    check('currency', sql`length(${t.currency}) = 3`),
    oneOf(t.weekStart, WEEKDAYS),
    ...flags([t.demo]),
  ],
);
