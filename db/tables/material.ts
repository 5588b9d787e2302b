import { integer, real, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import type { Material } from '../../shared/material.ts';
import { aboveZero, dates, neverEmpty, neverNegative, position } from './limits.ts';

export const materials = sqliteTable(
  'materials',
  {
    id: text().primaryKey(),
    position: position(),
    name: text().notNull(),
    unit: text().notNull(),
    onHand: real().notNull(),
    pack: real().notNull(),
    leadDays: integer(),
    minimum: real().notNull(),
    unitPrice: real(),
    supplier: text(),
    shelfLifeDays: integer(),
    /** So much is opened at a time, and keeps so many days then. */
    opensBy: real(),
    openedDays: integer(),
    stickMm: real(),
    kerfMm: real().notNull(),
    sheetWidthMm: real(),
    sheetLengthMm: real(),
    meshMm: real(),
    /** A list that is read and written whole (`rest-store.ts`): nothing asks for one of it. */
    rests: text({ mode: 'json' }).$type<NonNullable<Material['rests']>>(),
    /** A unit is a whole sheet. */
    inSheets: integer({ mode: 'boolean' }),
    /** "one bag opened 3 Apr": for the maker's eye, no rule reads it. */
    openedNote: text(),
    /** So much more was taken since the last count than the stock book had. No rule reads it. */
    shortBy: real().notNull().default(0),
  },
  (t) => [
    ...neverEmpty([t.id]),
    ...aboveZero([t.pack, t.stickMm, t.opensBy]),
    ...neverNegative([t.onHand, t.leadDays, t.minimum, t.unitPrice, t.shelfLifeDays, t.openedDays, t.kerfMm]),
  ],
);

/** Bought goods. They are on their way while `arrivedOn` is empty; only those are in the yard file. */
export const incomings = sqliteTable(
  'incomings',
  {
    id: integer().primaryKey({ autoIncrement: true }),
    position: position(),
    material: text()
      .notNull()
      .references(() => materials.id),
    quantity: real().notNull(),
    /** The day they are expected. */
    on: text().notNull(),
    /** The day that was said first, where they were put off since. */
    firstOn: text(),
    boughtOn: text(),
    /** What was paid for all of it. */
    price: real(),
    arrivedOn: text(),
    /** The date on the bags that came; null where they have none, or are still on their way. */
    useBy: text(),
  },
  (t) => [...dates([t.on, t.boughtOn, t.arrivedOn, t.useBy]), ...neverNegative([t.quantity, t.price])],
);
