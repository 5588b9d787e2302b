import { integer, primaryKey, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import type { CalendarEvent } from '../../shared/calendar-entry.ts';
import { neverEmpty } from './limits.ts';

/** Secret addresses at which the calendar is read. The secret itself is not kept, so that no copy of the database has it. */
export const calendarAddresses = sqliteTable(
  'calendarAddresses',
  {
    id: integer().primaryKey({ autoIncrement: true }),
    /** Who or what reads it: "My phone". */
    name: text().notNull(),
    /** SHA-256 of the secret, in hexadecimal. */
    secretHash: text().notNull().unique(),
    /** What every UID of its events ends in; another one for each address. */
    uidEnding: text().notNull(),
    madeAt: text().notNull(),
  },
  (t) => neverEmpty([t.name, t.secretHash, t.uidEnding]),
);

/** What an address gave out last, event by event: without it nobody could say what was changed or called off. */
export const calendarEvents = sqliteTable(
  'calendarEvents',
  {
    address: integer()
      .notNull()
      .references(() => calendarAddresses.id, { onDelete: 'cascade' }),
    key: text().notNull(),
    event: text({ mode: 'json' }).$type<CalendarEvent>().notNull(),
  },
  (t) => [primaryKey({ columns: [t.address, t.key] })],
);
