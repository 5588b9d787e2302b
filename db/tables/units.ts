import { sql } from 'drizzle-orm';
import { check, integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { UNIT_SYSTEMS } from '../../shared/units.ts';
import { oneOf } from './limits.ts';

/** What the yard measures with. One row, or none: then it is metric. */
export const yardUnits = sqliteTable(
  'yardUnits',
  { id: integer().primaryKey(), system: text({ enum: UNIT_SYSTEMS }).notNull() },
  (t) => [check('one_yard_units', sql`${t.id} = 1`), oneOf(t.system, UNIT_SYSTEMS)],
);
