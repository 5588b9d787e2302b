import { integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { castings } from './casting.ts';
import { neverEmpty, position } from './limits.ts';

/** Stripped, kept aside, and no finished piece until it is mended. Not in the yard file. */
export const piecesToMend = sqliteTable(
  'piecesToMend',
  {
    id: integer().primaryKey({ autoIncrement: true }),
    position: position(),
    casting: text()
      .notNull()
      .references(() => castings.id),
    /** What it came out of, as it was called then: the mould may be gone since. */
    mould: text().notNull(),
    /** Its cure counts from here. */
    filledAt: text().notNull(),
    strippedAt: text().notNull(),
    reason: text(),
  },
  (t) => neverEmpty([t.mould, t.filledAt, t.strippedAt, t.reason]),
);
