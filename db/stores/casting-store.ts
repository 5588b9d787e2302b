import { eq } from 'drizzle-orm';
import type { Casting } from '../../shared/casting.ts';
import { castingCuts, castingMaterials, castings } from '../tables/casting.ts';
import { castingSizes } from '../tables/casting-size.ts';
import { keptCastings } from '../tables/kept-ready.ts';
import type { Tx } from '../transaction.ts';
import { insertAll, nextPosition } from './rows.ts';

const putContents = async (tx: Tx, casting: string, { perPiece, cuts }: Pick<Casting, 'perPiece' | 'cuts'>) => {
  const own = <E extends object>(entries: readonly E[]) =>
    entries.map((entry, position) => ({ ...entry, casting, position }));
  await tx.delete(castingMaterials).where(eq(castingMaterials.casting, casting));
  await tx.delete(castingCuts).where(eq(castingCuts.casting, casting));
  await insertAll(tx, castingMaterials, own(perPiece));
  await insertAll(tx, castingCuts, own(cuts));
};

/** Puts a piece last in the list of what is cast. */
export const addCasting = async (tx: Tx, { perPiece, cuts, ...casting }: Casting): Promise<void> => {
  await tx.insert(castings).values({ ...casting, position: await nextPosition(tx, castings) });
  await putContents(tx, casting.id, { perPiece, cuts });
};

/** Everything of a piece anew. */
export const rewriteCasting = async (tx: Tx, { id, perPiece, cuts, ...casting }: Casting): Promise<void> => {
  await tx
    .update(castings)
    .set({ sheets: null, ...casting })
    .where(eq(castings.id, id));
  await putContents(tx, id, { perPiece, cuts });
};

/**
 * Takes a piece out of what is cast, with its size. Throws while a mould, a kit, an order or a piece in the yard names
 * it.
 */
export const removeCasting = async (tx: Tx, id: string): Promise<void> => {
  await putContents(tx, id, { perPiece: [], cuts: [] });
  await tx.delete(castingSizes).where(eq(castingSizes.casting, id));
  await tx.delete(keptCastings).where(eq(keptCastings.casting, id));
  await tx.delete(castings).where(eq(castings.id, id));
};
