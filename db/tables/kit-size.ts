import { sqliteTable, text } from 'drizzle-orm/sqlite-core';
import type { KitSize } from '../../shared/kit-size.ts';
import { kits } from './kit.ts';

/** The size a kit was worked out from: enough to draw it again. Not in the yard file. */
export const kitSizes = sqliteTable('kitSizes', {
  kit: text()
    .primaryKey()
    .references(() => kits.id, { onDelete: 'cascade' }),
  size: text({ mode: 'json' }).$type<KitSize>().notNull(),
});
