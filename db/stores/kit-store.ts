import { eq } from 'drizzle-orm';
import type { Kit } from '../../shared/kit.ts';
import type { KitSize } from '../../shared/kit-size.ts';
import { keptKits } from '../tables/kept-ready.ts';
import { kitCuts, kitParts, kitPieces, kits } from '../tables/kit.ts';
import { kitSizes } from '../tables/kit-size.ts';
import { kitPrices } from '../tables/money.ts';
import type { Tx } from '../transaction.ts';
import { insertAll, nextPosition } from './rows.ts';

const putContents = async (tx: Tx, kit: string, contents: Pick<Kit, 'pieces' | 'parts' | 'cuts'>): Promise<void> => {
  const own = <E extends object>(entries: readonly E[]) =>
    entries.map((entry, position) => ({ ...entry, position, kit }));
  for (const table of [kitPieces, kitParts, kitCuts]) await tx.delete(table).where(eq(table.kit, kit));
  await insertAll(tx, kitPieces, own(contents.pieces));
  await insertAll(tx, kitParts, own(contents.parts));
  await insertAll(tx, kitCuts, own(contents.cuts));
};

/** Puts a kit last in the list, with the size it was worked out from where there is one. */
export const addKit = async (tx: Tx, { pieces, parts, cuts, ...kit }: Kit, size?: KitSize): Promise<void> => {
  await tx.insert(kits).values({ ...kit, position: await nextPosition(tx, kits) });
  await putContents(tx, kit.id, { pieces, parts, cuts });
  if (size) await setKitSize(tx, kit.id, size);
};

/**
 * Everything of a kit anew. With `keepsSize` false the size it was worked out from is forgotten: it has other pieces
 * now.
 */
export const rewriteKit = async (
  tx: Tx,
  { id, pieces, parts, cuts, ...kit }: Kit,
  keepsSize: boolean,
): Promise<void> => {
  await tx.update(kits).set(kit).where(eq(kits.id, id));
  await putContents(tx, id, { pieces, parts, cuts });
  if (!keepsSize) await tx.delete(kitSizes).where(eq(kitSizes.kit, id));
};

/** Takes a kit out of the list. Throws while an order, open or past, names it. */
export const removeKit = async (tx: Tx, id: string): Promise<void> => {
  await putContents(tx, id, { pieces: [], parts: [], cuts: [] });
  await tx.delete(kitSizes).where(eq(kitSizes.kit, id));
  await tx.delete(keptKits).where(eq(keptKits.kit, id));
  await tx.delete(kitPrices).where(eq(kitPrices.kit, id));
  await tx.delete(kits).where(eq(kits.id, id));
};

/** Puts a size in place of the one there was. Whether the kit's pieces come to it is the caller's to know. */
export const setKitSize = async (tx: Tx, kit: string, size: KitSize): Promise<void> => {
  await tx.insert(kitSizes).values({ kit, size }).onConflictDoUpdate({ target: kitSizes.kit, set: { size } });
};

/** The sizes that kits were worked out from, in no order. */
export const sizesOfKits = async (tx: Tx): Promise<{ kit: string; size: KitSize }[]> => tx.select().from(kitSizes);
