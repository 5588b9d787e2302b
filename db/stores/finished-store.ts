import { asc, eq } from 'drizzle-orm';
import type { PieceMark } from '../../shared/piece-mark.ts';
import { finishedPieces as table } from '../tables/mould.ts';
import type { Tx } from '../transaction.ts';
import { nextPosition, present } from './rows.ts';

/** An entry of finished pieces; `readyAt` null: cured, `order` null: stock, `mould` and `filledAt` null: of no known mark. */
export type StoredFinished = Omit<typeof table.$inferSelect, 'position'>;

/** The mark of a piece that stands for itself; null where there is none, or several of them. */
const markOf = ({ mould, filledAt, count }: StoredFinished): PieceMark | null =>
  mould !== null && filledAt !== null && count === 1 ? { mould, filledAt } : null;

/** As in the yard file, at the same places: a plan's `fromFinished` counts in this list. */
export const finishedPieces = (tx: Tx): Promise<StoredFinished[]> =>
  tx
    .select({
      ...{ id: table.id, casting: table.casting, count: table.count, readyAt: table.readyAt, order: table.order },
      ...{ mould: table.mould, filledAt: table.filledAt },
    })
    .from(table)
    .orderBy(asc(table.position));

/** Puts pieces last in the list, as an entry of their own even where one says the same. */
export const addFinished = async (
  tx: Tx,
  pieces: Omit<StoredFinished, 'id' | 'mould' | 'filledAt'> & Partial<PieceMark>,
): Promise<void> => {
  await tx.insert(table).values({ ...pieces, position: await nextPosition(tx, table) });
};

/** How many an entry still has; with 0 the entry goes, and those after it move up one place. */
export const setFinishedCount = async (tx: Tx, id: number, count: number): Promise<void> => {
  if (count === 0) await tx.delete(table).where(eq(table.id, id));
  else await tx.update(table).set({ count }).where(eq(table.id, id));
};

/** The finished pieces at their places, as a yard file has them, with what is scratched into each. */
export const standingPieces = async (tx: Tx) =>
  (await finishedPieces(tx)).map((row) => {
    const { id: _id, mould: _mould, filledAt: _filledAt, ...pieces } = row;
    return { ...present(pieces), mark: markOf(row) };
  });
