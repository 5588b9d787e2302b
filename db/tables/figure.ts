import { primaryKey, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { FIGURE_KINDS } from '../../shared/figure.ts';
import { neverEmpty, oneOf } from './limits.ts';

/** Which figure: of the mix, casting, mould, material or kit of that id ("yard" for the yard), the field of the yard file. */
const whichFigure = () => ({
  kind: text({ enum: FIGURE_KINDS }).notNull(),
  id: text().notNull(),
  figure: text().notNull(),
});

/** Figures nobody has confirmed yet. What a row refers to may be gone; then it says nothing any more. */
export const guesses = sqliteTable('guesses', whichFigure(), (t) => [
  primaryKey({ columns: [t.kind, t.id, t.figure] }),
  ...neverEmpty([t.figure]),
  oneOf(t.kind, FIGURE_KINDS),
]);

/** Figures as they were typed ("4 ft 6 in"), to be shown so again for as long as they come to what is stored. */
export const typedFigures = sqliteTable('typedFigures', { ...whichFigure(), typed: text().notNull() }, (t) => [
  primaryKey({ columns: [t.kind, t.id, t.figure] }),
  ...neverEmpty([t.figure, t.typed]),
  oneOf(t.kind, FIGURE_KINDS),
]);
