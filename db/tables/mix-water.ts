import { real, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { aboveZero } from './limits.ts';
import { mixes } from './mix.ts';

/** How much water goes into a bag of a mix: for whoever mixes it. Not in the yard file, and no stock. */
export const mixWaters = sqliteTable(
  'mixWaters',
  {
    mix: text()
      .primaryKey()
      .references(() => mixes.id, { onDelete: 'cascade' }),
    litresPerBag: real().notNull(),
  },
  (t) => aboveZero([t.litresPerBag]),
);
