import { eq } from 'drizzle-orm';
import type { TypedLength } from '../../shared/units.ts';
import { castingSizes } from '../tables/casting-size.ts';
import type { Tx } from '../transaction.ts';

/** How large a piece is, as it was typed and in mm. */
export interface CastingSize {
  casting: string;
  length: TypedLength;
  height: TypedLength;
  thickness: TypedLength;
}

/** The sizes that are known, in no order. */
export const sizesOfCastings = async (tx: Tx): Promise<CastingSize[]> =>
  (await tx.select().from(castingSizes)).map((row) => ({
    casting: row.casting,
    length: { typed: row.lengthTyped, mm: row.lengthMm },
    height: { typed: row.heightTyped, mm: row.heightMm },
    thickness: { typed: row.thicknessTyped, mm: row.thicknessMm },
  }));

/** Puts a size in place of the one there was. The casting has to be there. */
export const setCastingSize = async (tx: Tx, { casting, length, height, thickness }: CastingSize): Promise<void> => {
  const figures = {
    ...{ lengthMm: length.mm, heightMm: height.mm, thicknessMm: thickness.mm },
    ...{ lengthTyped: length.typed, heightTyped: height.typed, thicknessTyped: thickness.typed },
  };
  await tx
    .insert(castingSizes)
    .values({ casting, ...figures })
    .onConflictDoUpdate({ target: castingSizes.casting, set: figures });
};

/** Takes the size of a casting out; the casting itself stays. */
export const removeCastingSize = async (tx: Tx, casting: string): Promise<void> => {
  await tx.delete(castingSizes).where(eq(castingSizes.casting, casting));
};
