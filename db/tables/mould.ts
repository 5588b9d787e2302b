import { foreignKey, integer, primaryKey, real, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { MOULD_CONDITIONS } from '../../shared/mould.ts';
import type { MouldPart } from '../../shared/mould-part.ts';
import { castings } from './casting.ts';
import { aboveZero, dates, flags, neverEmpty, neverNegative, oneOf, position } from './limits.ts';
import { orders } from './order.ts';

export const moulds = sqliteTable(
  'moulds',
  {
    /** What is painted on it: "1200 no. 2". */
    id: text().primaryKey(),
    position: position(),
    setFor: text()
      .notNull()
      .references(() => castings.id),
    condition: text({ enum: MOULD_CONDITIONS }).notNull(),
    prepped: integer({ mode: 'boolean' }).notNull(),
    repairedOn: text(),
    turnsSinceOil: integer().notNull(),
    oilEveryTurns: integer(),
    oilMinutes: integer().notNull(),
    oilDryMinutes: integer().notNull(),
    /** Its sealing coat dries until then, an instant; null: it is dry. */
    dryFrom: text(),
    note: text(),
    damageNote: text(),
    /** Looked over and put right after so many turns; null: nobody said. No rule reads it. */
    serviceEveryTurns: integer(),
    /** What it cost, in the yard's money, and over how many turns that is spread; null: as the yard says. No rule reads it. */
    cost: real(),
    costTurns: integer(),
    /** When its last piece came out, an instant: nothing was poured into it before. No rule reads it. */
    emptiedAt: text(),
    /** What was said of the parts of its set; null: nothing, all of it is whole. No rule reads it: what is broken makes the mould damaged. */
    parts: text({ mode: 'json' }).$type<MouldPart[]>(),
  },
  (t) => [
    ...neverEmpty([t.id]),
    oneOf(t.condition, MOULD_CONDITIONS),
    ...flags([t.prepped]),
    ...dates([t.repairedOn]),
    ...neverNegative([t.turnsSinceOil, t.oilMinutes, t.oilDryMinutes]),
    ...aboveZero([t.oilEveryTurns]),
  ],
);

export const mouldMakes = sqliteTable(
  'mouldMakes',
  {
    mould: text()
      .notNull()
      .references(() => moulds.id),
    casting: text()
      .notNull()
      .references(() => castings.id),
    position: position(),
    changeMinutes: integer().notNull(),
  },
  (t) => [primaryKey({ columns: [t.mould, t.casting] }), ...neverNegative([t.changeMinutes])],
);

/** Poured and not stripped yet; a mould holds one piece, of a kind that it makes. */
export const piecesInMould = sqliteTable(
  'piecesInMould',
  {
    mould: text().primaryKey(),
    casting: text().notNull(),
    position: position(),
    filledAt: text().notNull(),
    /** Set aside for this order. */
    order: text().references(() => orders.id),
  },
  (t) => [
    foreignKey({ columns: [t.mould, t.casting], foreignColumns: [mouldMakes.mould, mouldMakes.casting] }),
    ...neverEmpty([t.filledAt]),
  ],
);

/** Stripped pieces in the yard; without `readyAt` they are cured. */
export const finishedPieces = sqliteTable(
  'finishedPieces',
  {
    id: integer().primaryKey({ autoIncrement: true }),
    position: position(),
    casting: text()
      .notNull()
      .references(() => castings.id),
    count: integer().notNull(),
    readyAt: text(),
    order: text().references(() => orders.id),
    /** The mark of a piece that stands for itself: what it came out of, as it was called then, and when that was full. */
    mould: text(),
    filledAt: text(),
  },
  (t) => neverNegative([t.count]),
);
