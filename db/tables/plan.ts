import { sql } from 'drizzle-orm';
import { check, customType, integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import type { PlanOfWork } from '../../shared/late-work.ts';

/** What is known of the current plan beside the plan itself: one row, or none before the first. */
export const plans = sqliteTable(
  'plans',
  {
    id: integer().primaryKey(),
    /** Counts the plans that were stored: two of one number are the same plan. */
    number: integer().notNull().default(0),
    /** The revision of the data it was made from. */
    revision: integer().notNull(),
    madeAt: text().notNull(),
    /** The instant it was made for. */
    now: text().notNull(),
    /** It is good from the first of these minutes (since 1970) until the second, while the revision is the same. */
    goodFromMinute: integer().notNull(),
    goodUntilMinute: integer().notNull(),
    /** A longer search has been through it: what it found is in it, or there was nothing better. */
    improved: integer({ mode: 'boolean' }).notNull().default(false),
    /** How the plan was come by, in the planner's own terms: the next one starts from there. */
    memory: text({ mode: 'json' }).$type<unknown>(),
    /** What is over, not recorded and has no place in the plan. */
    unanswered: text({ mode: 'json' }).$type<PlanOfWork>(),
    /** Start of a session that was planned anew in it, and is not fixed while this plan is being improved. */
    anew: text(),
    /**
     * Until a longer search has been through it: sessions that begin after this minute (since 1970) were fixed in no plan
     * that one had been through, and are not fixed yet. Null: none were.
     */
    searchedUntilMinute: integer(),
  },
  (t) => [check('one_plan', sql`${t.id} = 1`)],
);

/** A text, or the same text packed by zlib: a value of either kind may stand in a column of text. */
const textOrPacked = customType<{ data: string | Buffer; driverData: string | Buffer }>({ dataType: () => 'text' });

/**
 * The current plan as text, a piece a row, so that a large one is never read or written in one go. Long pieces are packed:
 * what is written is copied twice more before it is safe, all on the one thread.
 */
export const planPieces = sqliteTable('planPieces', { place: integer().primaryKey(), piece: textOrPacked().notNull() });
