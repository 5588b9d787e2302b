import { real, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { castings } from './casting.ts';
import { aboveZero } from './limits.ts';

/** How large a piece is, for kits by size; each figure with the text it was typed as. Not in the yard file. */
export const castingSizes = sqliteTable(
  'castingSizes',
  {
    casting: text()
      .primaryKey()
      .references(() => castings.id, { onDelete: 'cascade' }),
    lengthMm: real().notNull(),
    heightMm: real().notNull(),
    thicknessMm: real().notNull(),
    lengthTyped: text().notNull(),
    heightTyped: text().notNull(),
    thicknessTyped: text().notNull(),
  },
  (t) => aboveZero([t.lengthMm, t.heightMm, t.thicknessMm]),
);
