import type { Kit } from '../../shared/kit.ts';
import type { KitSize } from '../../shared/kit-size.ts';
import { kitCuts, kitParts, kitPieces, kits } from '../tables/kit.ts';
import { kitSizes } from '../tables/kit-size.ts';
import type { Tx } from '../transaction.ts';
import { insertAll, nextPosition } from './rows.ts';

/** Puts a kit last in the list, with the size it was worked out from where there is one. */
export const addKit = async (tx: Tx, { pieces, parts, cuts, ...kit }: Kit, size?: KitSize): Promise<void> => {
  await tx.insert(kits).values({ ...kit, position: await nextPosition(tx, kits) });
  const own = <E extends object>(entries: readonly E[]) =>
    entries.map((entry, position) => ({ ...entry, position, kit: kit.id }));
  await insertAll(tx, kitPieces, own(pieces));
  await insertAll(tx, kitParts, own(parts));
  await insertAll(tx, kitCuts, own(cuts));
  if (size) await setKitSize(tx, kit.id, size);
};

export const setKitSize = async (tx: Tx, kit: string, size: KitSize): Promise<void> => {
  await tx.insert(kitSizes).values({ kit, size }).onConflictDoUpdate({ target: kitSizes.kit, set: { size } });
};

/** The sizes that kits were worked out from, in no order. */
export const sizesOfKits = async (tx: Tx): Promise<{ kit: string; size: KitSize }[]> => tx.select().from(kitSizes);
