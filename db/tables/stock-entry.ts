import { sql } from 'drizzle-orm';
import { type AnySQLiteColumn, check, index, integer, real, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { STOCK_KINDS, type StockWork } from '../../shared/stock-entry.ts';
import { aboveZero, dates, neverNegative, oneOf } from './limits.ts';
import { materials } from './material.ts';

/**
 * The stock book, line by line (`shared/stock-entry.ts`): what is in the yard is the sum of it. Lines are written and never
 * altered; what is undone has one more, whose `ofLine` is the line that it takes back, or brings back where the undoing was
 * undone. `change` is null of what came with an archive.
 */
export const stockEntries = sqliteTable(
  'stockEntries',
  {
    id: integer().primaryKey({ autoIncrement: true }),
    at: text().notNull(),
    material: text()
      .notNull()
      .references(() => materials.id, { onDelete: 'cascade' }),
    kind: text({ enum: STOCK_KINDS }).notNull(),
    quantity: real().notNull(),
    lengthMm: real(),
    widthMm: real(),
    useBy: text(),
    openedAt: text(),
    beyond: real().notNull().default(0),
    work: text({ mode: 'json' }).$type<StockWork>(),
    reason: text(),
    by: text(),
    change: integer(),
    ofLine: integer().references((): AnySQLiteColumn => stockEntries.id),
  },
  (t) => [
    index('stockEntries_material').on(t.material, t.lengthMm, t.id),
    // What is in the yard of each bag date is read with every yard, and most lines have none.
    index('stockEntries_dated')
      .on(t.material, t.useBy, t.openedAt, t.quantity)
      .where(sql`${t.useBy} is not null or ${t.openedAt} is not null`),
    index('stockEntries_ofLine').on(t.ofLine).where(sql`${t.ofLine} is not null`),
    oneOf(t.kind, STOCK_KINDS),
    ...dates([t.useBy]),
    ...aboveZero([t.lengthMm]),
    ...neverNegative([t.beyond]),
    check('offcuts_are_whole', sql`${t.lengthMm} is null or ${t.quantity} = cast(${t.quantity} as integer)`),
  ],
);
