import { sql } from 'drizzle-orm';
import { check, integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import type { PlanFile } from '../../shared/plan.ts';

/** The current plan: one row, or none before the first. */
export const plans = sqliteTable(
  'plans',
  {
    id: integer().primaryKey(),
    /** The revision of the data it was made from. */
    revision: integer().notNull(),
    madeAt: text().notNull(),
    /** The instant it was made for. */
    now: text().notNull(),
    /** It is good from the first of these minutes (since 1970) until the second, while the revision is the same. */
    goodFromMinute: integer().notNull(),
    goodUntilMinute: integer().notNull(),
    plan: text({ mode: 'json' }).$type<PlanFile>().notNull(),
  },
  (t) => [check('one_plan', sql`${t.id} = 1`)],
);
