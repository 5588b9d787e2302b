import { integer, real, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { aboveZero, neverEmpty, neverNegative, position } from './limits.ts';
import { materials } from './material.ts';

export const mixes = sqliteTable(
  'mixes',
  {
    id: text().primaryKey(),
    position: position(),
    name: text().notNull(),
    yieldKgPerBag: real().notNull(),
    bagStep: real().notNull(),
    maxBags: real().notNull(),
    crew: integer().notNull(),
    mixMinutes: integer().notNull(),
    workingMinutes: integer().notNull(),
    washMinutes: integer().notNull(),
    attendMinutes: integer().notNull(),
    demouldMinutes: integer().notNull(),
    cureHours: real().notNull(),
    referenceCelsius: real().notNull(),
    activationKelvin: real().notNull(),
    minCelsius: real(),
    maxCelsius: real(),
    protectHours: real().notNull(),
  },
  (t) => [
    ...neverEmpty([t.id]),
    ...aboveZero([t.yieldKgPerBag, t.bagStep, t.maxBags]),
    ...neverNegative([t.crew, t.mixMinutes, t.workingMinutes, t.washMinutes, t.attendMinutes, t.demouldMinutes]),
    ...neverNegative([t.cureHours, t.activationKelvin, t.protectHours]),
  ],
);

/** What goes into one bag's worth of a mix. */
export const mixMaterials = sqliteTable(
  'mixMaterials',
  {
    id: integer().primaryKey({ autoIncrement: true }),
    position: position(),
    mix: text()
      .notNull()
      .references(() => mixes.id),
    material: text()
      .notNull()
      .references(() => materials.id),
    quantity: real().notNull(),
  },
  (t) => neverNegative([t.quantity]),
);
