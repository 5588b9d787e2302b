import { eq } from 'drizzle-orm';
import type { Material } from '../../shared/material.ts';
import { restsWith } from '../../shared/rests.ts';
import { materials } from '../tables/material.ts';
import type { Tx } from '../transaction.ts';

type Rests = NonNullable<Material['rests']>;

/** The rests of sheets of one material. */
export const restsOf = async (tx: Tx, material: string): Promise<Rests> =>
  (await tx.select({ rests: materials.rests }).from(materials).where(eq(materials.id, material)))[0]?.rests ?? [];

/** So many rests of a size (mm) more, or fewer where `count` is below 0: never fewer than none. */
export const addRests = async (
  tx: Tx,
  material: string,
  size: { widthMm: number; lengthMm: number },
  count: number,
): Promise<void> => {
  const rests = restsWith(await restsOf(tx, material), size, count);
  await tx
    .update(materials)
    .set({ rests: rests.length > 0 ? rests : null })
    .where(eq(materials.id, material));
};
