import { sql } from 'drizzle-orm';
import { check, integer, real, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import type { Keep } from '../../shared/plan.ts';
import type { PromiseOdds } from '../../shared/promise-odds.ts';
import { USUAL_HOURS } from '../../shared/temperature.ts';
import type { Weekday } from '../../shared/time.ts';
import { neverNegative } from './limits.ts';

/** The yard as a whole: one row. */
export const yards = sqliteTable(
  'yards',
  {
    id: integer().primaryKey(),
    name: text().notNull(),
    timeZone: text().notNull(),
    horizonDays: integer().notNull(),
    mixers: integer().notNull(),
    rackSpaces: integer(),
    setUpMinutes: integer().notNull(),
    clearUpMinutes: integer().notNull(),
    handoverDays: text({ mode: 'json' }).$type<Weekday[]>(),
    sessionsInHand: integer().notNull(),
    /** How often a date that is promised is to be kept; empty: as usual. */
    promiseOdds: real().$type<PromiseOdds>(),
    /** What is ordered may come so many days late. */
    deliveryDaysInHand: integer().notNull().default(0),
    /** "HH:MM": what comes on a day is there by then. */
    deliveredBy: text().notNull().default('00:00'),
    /** "HH:MM": when a day is coldest, and when it is warmest. */
    coldestAt: text().notNull().default(USUAL_HOURS.coldestAt),
    warmestAt: text().notNull().default(USUAL_HOURS.warmestAt),
    batchWorthDays: real().notNull(),
    bagWorthDays: real().notNull(),
    /** Batches and pours that are fixed, as they stood in an earlier plan. */
    keep: text({ mode: 'json' }).$type<Keep>(),
    /** So many hours before a session begins, all of it becomes fixed; 0: never ahead of it. */
    fixedHours: integer().notNull().default(24),
  },
  (t) => [
    check('one_yard', sql`${t.id} = 1`),
    check('horizon', sql`${t.horizonDays} between 1 and 7300`),
    ...neverNegative([
      t.mixers,
      t.rackSpaces,
      t.setUpMinutes,
      t.clearUpMinutes,
      t.sessionsInHand,
      t.deliveryDaysInHand,
      t.batchWorthDays,
      t.bagWorthDays,
      t.fixedHours,
    ]),
  ],
);

/** Counts the changes of everything a plan depends on; a plan remembers the count it was made from. One row. */
export const revisions = sqliteTable(
  'revisions',
  { id: integer().primaryKey(), revision: integer().notNull() },
  (t) => [check('one_revision', sql`${t.id} = 1`)],
);
