import { sql } from 'drizzle-orm';
import { check, integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { ENGLISHES } from '../../shared/english.ts';
import { UNIT_SYSTEMS } from '../../shared/units.ts';
import { oneOf } from './limits.ts';

/** What the yard measures with and how it writes. One row, or none: then it is metric. Without `english` it goes by the units. */
export const yardUnits = sqliteTable(
  'yardUnits',
  { id: integer().primaryKey(), system: text({ enum: UNIT_SYSTEMS }).notNull(), english: text({ enum: ENGLISHES }) },
  (t) => [check('one_yard_units', sql`${t.id} = 1`), oneOf(t.system, UNIT_SYSTEMS)],
);
