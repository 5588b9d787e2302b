import { sqliteTable, text } from 'drizzle-orm/sqlite-core';
import type { MaterialBuying, SupplierFacts } from '../../shared/supplier.ts';
import { neverEmpty } from './limits.ts';
import { materials } from './material.ts';

/** What is known of those who sell things; materials name them. One of whom nothing is known needs no row. */
export const suppliers = sqliteTable(
  'suppliers',
  { name: text().primaryKey(), facts: text({ mode: 'json' }).$type<SupplierFacts>().notNull() },
  (t) => neverEmpty([t.name]),
);

/** What buying asks of a material. Not in the yard file. */
export const materialBuyings = sqliteTable('materialBuyings', {
  material: text()
    .primaryKey()
    .references(() => materials.id, { onDelete: 'cascade' }),
  facts: text({ mode: 'json' }).$type<MaterialBuying>().notNull(),
});
