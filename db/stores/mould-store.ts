import { and, asc, eq, notInArray } from 'drizzle-orm';
import type { Mould } from '../../shared/mould.ts';
import { partsInUse } from '../../shared/mould-part.ts';
import { mouldMakes, moulds, piecesInMould } from '../tables/mould.ts';
import type { Tx } from '../transaction.ts';
import { belongings, insertAll, nextPosition } from './rows.ts';

type MouldRow = typeof moulds.$inferSelect;
type PieceRow = Omit<typeof piecesInMould.$inferSelect, 'position'>;

/** A mould as in a yard file, with null for what is not said of it, its notes, and the piece that is in it. */
export interface StoredMould extends Omit<MouldRow, 'position'> {
  makes: { casting: string; changeMinutes: number }[];
  /** What was poured into it and not stripped yet. */
  piece: Omit<PieceRow, 'mould'> | null;
}

/** In the order in which the maker lists them. */
export const mouldsInOrder = async (tx: Tx): Promise<StoredMould[]> => {
  const makes = belongings(
    await tx.select().from(mouldMakes).orderBy(asc(mouldMakes.position)),
    (row) => row.mould,
    ({ casting, changeMinutes }) => ({ casting, changeMinutes }),
  );
  const rows = await tx
    .select({ mould: moulds, piece: piecesInMould })
    .from(moulds)
    .leftJoin(piecesInMould, eq(piecesInMould.mould, moulds.id))
    .orderBy(asc(moulds.position));
  return rows.map(({ mould: { position: _position, ...facts }, piece }) => ({
    ...facts,
    makes: makes(facts.id),
    piece: piece && { casting: piece.casting, filledAt: piece.filledAt, order: piece.order },
  }));
};

/** One mould, or null where none has that id. */
export const mouldById = async (tx: Tx, id: string): Promise<StoredMould | null> =>
  (await mouldsInOrder(tx)).find((mould) => mould.id === id) ?? null;

/** A mould that is used again has no broken part any more. */
const partsThen = async (tx: Tx, id: string, { condition }: Partial<MouldRow>): Promise<Partial<MouldRow>> => {
  if (condition === undefined || condition === 'damaged' || condition === 'retired') return {};
  const [row] = await tx.select({ parts: moulds.parts }).from(moulds).where(eq(moulds.id, id));
  return row?.parts ? { parts: partsInUse(row.parts) } : {};
};

/**
 * Sets what the patch has of a mould; null takes away what may be left out. What it makes is set by `rewriteMould`. Once it
 * is in use again, so are its parts.
 */
export const updateMould = async (
  tx: Tx,
  id: string,
  patch: Partial<Omit<MouldRow, 'id' | 'position'>>,
): Promise<void> => {
  const parts = await partsThen(tx, id, patch);
  await tx
    .update(moulds)
    .set({ ...parts, ...patch })
    .where(eq(moulds.id, id));
};

/** Puts an empty mould last in the list. */
export const addMould = async (tx: Tx, { makes, ...facts }: Mould, note: string | null = null): Promise<void> => {
  await tx.insert(moulds).values({ ...facts, note, position: await nextPosition(tx, moulds) });
  await insertAll(
    tx,
    mouldMakes,
    makes.map((make, position) => ({ ...make, mould: facts.id, position })),
  );
};

/**
 * A piece is in the mould from now on. Throws when one is in it already. What else a pour does (turns, material) is
 * not done here.
 */
export const fillMould = async (tx: Tx, piece: PieceRow): Promise<void> => {
  await tx.insert(piecesInMould).values({ ...piece, position: await nextPosition(tx, piecesInMould) });
};

/**
 * The piece in a mould goes: stripped, or broken out. Where it goes to, and that the mould is dirty, is not said here.
 */
export const emptyMould = async (tx: Tx, mould: string): Promise<void> => {
  await tx.delete(piecesInMould).where(eq(piecesInMould.mould, mould));
};

/** A mould with what it is called and makes now; a piece in it goes along. What it no longer makes must not be in it. */
export const rewriteMould = async (
  tx: Tx,
  id: string,
  { makes, ...facts }: Partial<Omit<MouldRow, 'position'>> & Pick<MouldRow, 'id'> & Pick<StoredMould, 'makes'>,
): Promise<void> => {
  const rows = makes.map((make, position) => ({ ...make, mould: facts.id, position }));
  if (facts.id !== id) {
    const [old] = await tx.select().from(moulds).where(eq(moulds.id, id));
    if (old) await tx.insert(moulds).values({ ...old, ...facts });
    await insertAll(tx, mouldMakes, rows);
    await tx.update(piecesInMould).set({ mould: facts.id }).where(eq(piecesInMould.mould, id));
    return removeMould(tx, id);
  }
  await updateMould(tx, id, facts);
  for (const { casting, position, changeMinutes, mould } of rows)
    await tx
      .insert(mouldMakes)
      .values({ mould, casting, position, changeMinutes })
      .onConflictDoUpdate({ target: [mouldMakes.mould, mouldMakes.casting], set: { position, changeMinutes } });
  const made = makes.map(({ casting }) => casting);
  await tx.delete(mouldMakes).where(and(eq(mouldMakes.mould, id), notInArray(mouldMakes.casting, made)));
};

/** Takes an empty mould out of the list. Throws while a piece is in it. */
export const removeMould = async (tx: Tx, id: string): Promise<void> => {
  await tx.delete(mouldMakes).where(eq(mouldMakes.mould, id));
  await tx.delete(moulds).where(eq(moulds.id, id));
};
