import { integer, primaryKey, real, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { aboveZero } from './limits.ts';
import { materials } from './material.ts';

/** What is left of sticks that were opened, those of one length together. */
export const offcuts = sqliteTable(
  'offcuts',
  {
    material: text()
      .notNull()
      .references(() => materials.id, { onDelete: 'cascade' }),
    lengthMm: real().notNull(),
    count: integer().notNull(),
  },
  (t) => [primaryKey({ columns: [t.material, t.lengthMm] }), ...aboveZero([t.lengthMm, t.count])],
);
