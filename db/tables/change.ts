import { sql } from 'drizzle-orm';
import { type AnySQLiteColumn, check, index, integer, primaryKey, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import type { LateTaken } from '../../shared/late-work.ts';
import type { Keep } from '../../shared/plan.ts';
import { neverEmpty } from './limits.ts';

/** What an order was promised by a plan. `completesOn` is null when it could not be planned. */
export interface StoredPromise {
  order: string;
  customer: string | null;
  /** The date it is measured by, where it has one. */
  due?: string | null;
  /** That date was only asked for; nobody was told it. */
  isWanted?: true;
  completesOn: string | null;
  /** All of it was there by then. */
  isThere?: true;
  daysLate: number | null;
  /** Why it could not be planned. */
  reason: string | null;
}

/** A mix that was fixed and could not stay as it was. */
export interface StoredDrop {
  /** When it was to be mixed. */
  at: string;
  moulds: string[];
  reason: string;
}

/** What was done, by whom it was undone, and what the plan promised before and after. */
export const changes = sqliteTable(
  'changes',
  {
    id: integer().primaryKey({ autoIncrement: true }),
    at: text().notNull(),
    kind: text().notNull(),
    /** In the maker's words: "800 no. 2 marked damaged". */
    words: text().notNull(),
    /** The name chosen on the device it was done on; null where none is, and of what the plan did by itself. */
    by: text(),
    before: text({ mode: 'json' }).$type<StoredPromise[]>().notNull(),
    after: text({ mode: 'json' }).$type<StoredPromise[]>().notNull(),
    undoneBy: integer().references((): AnySQLiteColumn => changes.id),
    dropped: text({ mode: 'json' }).$type<StoredDrop[]>(),
  },
  (t) => neverEmpty([t.kind]),
);

/** The change whose writes are being captured just now: one row, empty between changes. */
export const changeUnderWay = sqliteTable(
  'changeUnderWay',
  { id: integer().primaryKey(), change: integer().references(() => changes.id) },
  (t) => [check('one_change', sql`${t.id} = 1`)],
);

/** A row as it was before and after one write of a change: column name to its value as an SQL literal. */
export type CapturedRow = Record<string, string>;

export const rowChanges = sqliteTable(
  'rowChanges',
  {
    id: integer().primaryKey({ autoIncrement: true }),
    change: integer()
      .notNull()
      .references(() => changes.id),
    tableName: text().notNull(),
    oldRow: text({ mode: 'json' }).$type<CapturedRow>(),
    newRow: text({ mode: 'json' }).$type<CapturedRow>(),
  },
  (t) => [index('rowChanges_change').on(t.change)],
);

/** Something the maker has to be told once, such as a hold that ran out. */
export const notices = sqliteTable('notices', {
  id: integer().primaryKey({ autoIncrement: true }),
  at: text().notNull(),
  words: text().notNull(),
  change: integer()
    .notNull()
    .references(() => changes.id),
  dismissedAt: text(),
});

/** A session that was fixed and was planned anew, with its mixes and pours as they had been until then. */
export const plannedAnew = sqliteTable('plannedAnew', {
  change: integer()
    .primaryKey()
    .references(() => changes.id),
  sessionStart: text().notNull(),
  before: text({ mode: 'json' }).$type<Keep>().notNull(),
});

/** What was said of a step when it was recorded, and the minute it was done, counted since 1970. */
export interface StepSaid {
  what: string;
  minute: number;
}

/** Steps that a change recorded, by the names they had on the page: tapped again, the tap finds the change. */
export const recordedSteps = sqliteTable(
  'recordedSteps',
  {
    step: text().notNull(),
    change: integer()
      .notNull()
      .references(() => changes.id),
    /** Null of what was recorded before it was kept. */
    said: text({ mode: 'json' }).$type<StepSaid>(),
  },
  (t) => [primaryKey({ columns: [t.step, t.change] })],
);

/** Forms that came with a key made in the browser, and what came of each: sent again, it finds its change. */
export const acts = sqliteTable(
  'acts',
  {
    key: text().primaryKey(),
    change: integer()
      .notNull()
      .references(() => changes.id),
  },
  (t) => neverEmpty([t.key]),
);

/** Late work, and work under way, that a change took off the list of what is not recorded yet: undone, it is back on it. */
export const lateWork = sqliteTable('lateWork', {
  change: integer()
    .primaryKey()
    .references(() => changes.id),
  /** When, in minutes since 1970. */
  atMinute: integer().notNull(),
  taken: text({ mode: 'json' }).$type<LateTaken>().notNull(),
});
