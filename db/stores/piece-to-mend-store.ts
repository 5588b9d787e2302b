import { asc, eq } from 'drizzle-orm';
import { piecesToMend as table } from '../tables/piece-to-mend.ts';
import type { Tx } from '../transaction.ts';
import { nextPosition } from './rows.ts';

/** A piece kept aside, known by its number. Its cure counts from `filledAt`. */
export type PieceToMend = Omit<typeof table.$inferSelect, 'position'>;

/** In the order in which they were put aside. */
export const piecesToMend = async (tx: Tx): Promise<PieceToMend[]> =>
  (await tx.select().from(table).orderBy(asc(table.position))).map(({ position: _position, ...piece }) => piece);

/** One piece kept aside, or null where it is no longer. */
export const pieceToMendById = async (tx: Tx, id: number): Promise<PieceToMend | null> =>
  (await piecesToMend(tx)).find((piece) => piece.id === id) ?? null;

/** Puts a piece aside. It is in no list of finished pieces and takes no rack space in plans. */
export const addPieceToMend = async (tx: Tx, piece: Omit<PieceToMend, 'id'>): Promise<void> => {
  await tx.insert(table).values({ ...piece, position: await nextPosition(tx, table) });
};

/** Mended, or scrapped after all. */
export const removePieceToMend = async (tx: Tx, id: number): Promise<void> => {
  await tx.delete(table).where(eq(table.id, id));
};
