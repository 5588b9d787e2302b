import { integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { aboveZero } from './limits.ts';
import { mixes } from './mix.ts';

/** For how many hours pieces of a mix are kept wet once they are stripped. Not in the yard file: no plan has minutes for it. */
export const mixWetCures = sqliteTable(
  'mixWetCures',
  {
    mix: text()
      .primaryKey()
      .references(() => mixes.id, { onDelete: 'cascade' }),
    hours: integer().notNull(),
  },
  (t) => aboveZero([t.hours]),
);
