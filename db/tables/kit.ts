import { integer, real, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { castings } from './casting.ts';
import { aboveZero, neverEmpty, neverNegative, position } from './limits.ts';
import { materials } from './material.ts';

export const kits = sqliteTable(
  'kits',
  { id: text().primaryKey(), position: position(), name: text().notNull(), packMinutes: integer().notNull() },
  (t) => [...neverEmpty([t.id]), ...neverNegative([t.packMinutes])],
);

const ofKit = () => ({
  id: integer().primaryKey({ autoIncrement: true }),
  position: position(),
  kit: text()
    .notNull()
    .references(() => kits.id),
});
const material = () =>
  text()
    .notNull()
    .references(() => materials.id);

export const kitPieces = sqliteTable(
  'kitPieces',
  {
    ...ofKit(),
    casting: text()
      .notNull()
      .references(() => castings.id),
    count: integer().notNull(),
  },
  (t) => neverNegative([t.count]),
);

export const kitParts = sqliteTable('kitParts', { ...ofKit(), material: material(), quantity: real().notNull() }, (t) =>
  neverNegative([t.quantity]),
);

/** Pins and the like, cut for one kit. */
export const kitCuts = sqliteTable(
  'kitCuts',
  { ...ofKit(), material: material(), lengthMm: real().notNull(), count: integer().notNull() },
  (t) => [...aboveZero([t.lengthMm]), ...neverNegative([t.count])],
);
