import { and, asc, eq, type SQL } from 'drizzle-orm';
import type { AnySQLiteColumn } from 'drizzle-orm/sqlite-core';
import type { FigureOf } from '../../shared/figure.ts';
import { guesses, typedFigures } from '../tables/figure.ts';
import type { Tx } from '../transaction.ts';

type Columns = Record<keyof FigureOf, AnySQLiteColumn>;

const isOf = (table: Columns, { kind, id }: Pick<FigureOf, 'kind' | 'id'>): SQL | undefined =>
  and(eq(table.kind, kind), eq(table.id, id));

const isFigure = (table: Columns, which: FigureOf): SQL | undefined =>
  and(isOf(table, which), eq(table.figure, which.figure));

/** Every figure that is still to check. */
export const guessesOfYard = (tx: Tx): Promise<FigureOf[]> =>
  tx.select().from(guesses).orderBy(asc(guesses.kind), asc(guesses.id), asc(guesses.figure));

/** Adds figures to the guesses; one that is a guess already stays one. */
export const addGuesses = async (tx: Tx, added: readonly FigureOf[]): Promise<void> => {
  if (added.length === 0) return;
  await tx
    .insert(guesses)
    .values([...added])
    .onConflictDoNothing();
};

/** The figure was confirmed. */
export const dropGuess = async (tx: Tx, which: FigureOf): Promise<void> => {
  await tx.delete(guesses).where(isFigure(guesses, which));
};

/**
 * What was typed for the figures of one mix, casting, mould, material, kit, or of the yard, by the name of the figure.
 * A figure that was not typed, or was changed since without typing, is left out.
 */
export const typedOf = async (tx: Tx, owner: Pick<FigureOf, 'kind' | 'id'>): Promise<Record<string, string>> => {
  const rows = await tx.select().from(typedFigures).where(isOf(typedFigures, owner));
  return Object.fromEntries(rows.map(({ figure, typed }) => [figure, typed]));
};

/** What was typed for the figures of all of a kind, by "id figure". */
export const typedFiguresOf = async (tx: Tx, kind: FigureOf['kind']): Promise<ReadonlyMap<string, string>> => {
  const rows = await tx.select().from(typedFigures).where(eq(typedFigures.kind, kind));
  return new Map(rows.map(({ id, figure, typed }) => [`${id} ${figure}`, typed]));
};

/** What was typed for one figure of all of a kind, by whose it is. */
export const typedForFigure = async (
  tx: Tx,
  { kind, figure }: Pick<FigureOf, 'kind' | 'figure'>,
): Promise<ReadonlyMap<string, string>> => {
  const rows = await tx
    .select()
    .from(typedFigures)
    .where(and(eq(typedFigures.kind, kind), eq(typedFigures.figure, figure)));
  return new Map(rows.map(({ id, typed }) => [id, typed]));
};

/** Keeps what was typed for a figure, or forgets it: null and "" both do. */
export const setTyped = async (tx: Tx, which: FigureOf, typed: string | null): Promise<void> => {
  await tx.delete(typedFigures).where(isFigure(typedFigures, which));
  if (typed) await tx.insert(typedFigures).values({ ...which, typed });
};

/** What these belonged to is gone. */
export const dropFigures = async (tx: Tx, owner: Pick<FigureOf, 'kind' | 'id'>): Promise<void> => {
  await tx.delete(guesses).where(isOf(guesses, owner));
  await tx.delete(typedFigures).where(isOf(typedFigures, owner));
};

/**
 * Nothing is a guess any more and nothing is known to have been typed: before another yard takes the place of this
 * one.
 */
export const dropAllFigures = async (tx: Tx): Promise<void> => {
  await tx.delete(guesses);
  await tx.delete(typedFigures);
};
