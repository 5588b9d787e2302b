import { integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';

export const customers = sqliteTable('customers', {
  id: integer().primaryKey({ autoIncrement: true }),
  name: text().notNull(),
  phone: text(),
  note: text(),
});
