import { integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { aboveZero } from './limits.ts';
import { mixes } from './mix.ts';

/**
 * For how many hours pieces of a mix are kept wet once they are stripped, and how many minutes of each session that takes;
 * 0 where nobody said: no plan has minutes for it then, and no yard file knows of it.
 */
export const mixWetCures = sqliteTable(
  'mixWetCures',
  {
    mix: text()
      .primaryKey()
      .references(() => mixes.id, { onDelete: 'cascade' }),
    hours: integer().notNull(),
    minutes: integer().notNull().default(0),
  },
  (t) => aboveZero([t.hours]),
);
