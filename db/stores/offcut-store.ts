import { and, asc, desc, eq } from 'drizzle-orm';
import type { Material } from '../../shared/material.ts';
import { offcuts } from '../tables/offcut.ts';
import type { Tx } from '../transaction.ts';

type OffcutRow = typeof offcuts.$inferSelect;

/** A yard file may have one length twice, or lengths in any order: here they are together. */
export const offcutRowsOf = (materials: readonly Pick<Material, 'id' | 'offcuts'>[]): OffcutRow[] =>
  materials.flatMap(({ id, offcuts: own = [] }) => {
    const counts = new Map<number, number>();
    for (const { lengthMm, count } of own) counts.set(lengthMm, (counts.get(lengthMm) ?? 0) + count);
    return [...counts].map(([lengthMm, count]) => ({ material: id, lengthMm, count }));
  });

/** Offcuts by material, the longest first, as a yard file has them; materials without any are left out. */
export const offcutsByMaterial = async (tx: Tx): Promise<ReadonlyMap<string, NonNullable<Material['offcuts']>>> => {
  const rows = await tx.select().from(offcuts).orderBy(asc(offcuts.material), desc(offcuts.lengthMm));
  const byMaterial = new Map<string, NonNullable<Material['offcuts']>>();
  for (const { material, lengthMm, count } of rows)
    byMaterial.set(material, [...(byMaterial.get(material) ?? []), { lengthMm, count }]);
  return byMaterial;
};

const isOne = (material: string, lengthMm: number) =>
  and(eq(offcuts.material, material), eq(offcuts.lengthMm, lengthMm));

/** So many offcuts of a length (mm) more, or fewer where `count` is below 0: never fewer than none. */
export const addOffcuts = async (tx: Tx, material: string, lengthMm: number, count: number): Promise<void> => {
  const [was] = await tx.select().from(offcuts).where(isOne(material, lengthMm));
  const now = (was?.count ?? 0) + count;
  if (now <= 0) await tx.delete(offcuts).where(isOne(material, lengthMm));
  else if (was) await tx.update(offcuts).set({ count: now }).where(isOne(material, lengthMm));
  else await tx.insert(offcuts).values({ material, lengthMm, count: now });
};

/** The offcuts of one material, the longest first. */
export const offcutsOf = async (tx: Tx, material: string): Promise<NonNullable<Material['offcuts']>> =>
  (await offcutsByMaterial(tx)).get(material) ?? [];
