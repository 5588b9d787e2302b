import { integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { castings } from './casting.ts';
import { kits } from './kit.ts';
import { aboveZero } from './limits.ts';

/** So many kits are to stand in the yard, for whoever comes: the pieces of them. Not in the yard file, and no order. */
export const keptKits = sqliteTable(
  'keptKits',
  {
    kit: text()
      .primaryKey()
      .references(() => kits.id, { onDelete: 'cascade' }),
    count: integer().notNull(),
  },
  (t) => aboveZero([t.count]),
);

/** The same of single pieces. */
export const keptCastings = sqliteTable(
  'keptCastings',
  {
    casting: text()
      .primaryKey()
      .references(() => castings.id, { onDelete: 'cascade' }),
    count: integer().notNull(),
  },
  (t) => aboveZero([t.count]),
);
