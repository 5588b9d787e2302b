import { integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import type { WorkRecord } from '../../shared/work-record.ts';

/** All that was done, in the order in which it was recorded. Moulds and panels in it may be gone since. Not in the yard file. */
export const workRecords = sqliteTable('workRecords', {
  id: integer().primaryKey({ autoIncrement: true }),
  record: text({ mode: 'json' }).$type<WorkRecord>().notNull(),
});
