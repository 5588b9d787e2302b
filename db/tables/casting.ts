import { integer, real, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import type { Casting } from '../../shared/casting.ts';
import { aboveZero, neverEmpty, neverNegative, position } from './limits.ts';
import { materials } from './material.ts';
import { mixes } from './mix.ts';

export const castings = sqliteTable(
  'castings',
  {
    id: text().primaryKey(),
    position: position(),
    name: text().notNull(),
    mix: text()
      .notNull()
      .references(() => mixes.id),
    kg: real().notNull(),
    fillMinutes: integer().notNull(),
    stripMinutes: integer().notNull(),
    stripCrew: integer().notNull(),
    cleanMinutes: integer().notNull(),
    prepMinutes: integer().notNull(),
    rackSpaces: integer().notNull(),
    /** As the rests of a material: read and written whole. */
    sheets: text({ mode: 'json' }).$type<NonNullable<Casting['sheets']>>(),
  },
  (t) => [
    ...neverEmpty([t.id]),
    ...aboveZero([t.fillMinutes]),
    ...neverNegative([t.kg, t.stripMinutes, t.stripCrew, t.cleanMinutes, t.prepMinutes, t.rackSpaces]),
  ],
);

const ofCasting = () => ({
  id: integer().primaryKey({ autoIncrement: true }),
  position: position(),
  casting: text()
    .notNull()
    .references(() => castings.id),
  material: text()
    .notNull()
    .references(() => materials.id),
});

/** What goes into one piece beside its mix. */
export const castingMaterials = sqliteTable('castingMaterials', { ...ofCasting(), quantity: real().notNull() }, (t) =>
  neverNegative([t.quantity]),
);

/** What is cut for one piece. */
export const castingCuts = sqliteTable(
  'castingCuts',
  { ...ofCasting(), lengthMm: real().notNull(), count: integer().notNull() },
  (t) => [...aboveZero([t.lengthMm]), ...neverNegative([t.count])],
);
