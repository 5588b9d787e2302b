import { asc, eq } from 'drizzle-orm';
import { AHEAD_DAYS, type MaterialBuying, type Supplier, type SupplierInFile } from '../../shared/supplier.ts';
import { materials } from '../tables/material.ts';
import { materialBuyings, suppliers } from '../tables/supplier.ts';
import type { Tx } from '../transaction.ts';

/** All suppliers of whom something is known, by name. */
export const suppliersByName = async (tx: Tx): Promise<Supplier[]> =>
  (await tx.select().from(suppliers).orderBy(asc(suppliers.name))).map(({ name, facts }) => ({ name, ...facts }));

/** The row of a supplier of whom only days are known: it asks for nothing else. */
export const rowOfDays = ({ name, ...days }: SupplierInFile): typeof suppliers.$inferInsert => ({
  name,
  facts: { ...days, minimumOrder: 0, deliveryPrice: 0, aheadDays: AHEAD_DAYS },
});

/** One supplier, or null where nothing is known of one of that name. */
export const supplierNamed = async (tx: Tx, name: string): Promise<Supplier | null> => {
  const [row] = await tx.select().from(suppliers).where(eq(suppliers.name, name));
  return row ? { name: row.name, ...row.facts } : null;
};

/** Says what is known of a supplier; what was known before is gone. */
export const setSupplier = async (tx: Tx, { name, ...facts }: Supplier): Promise<void> => {
  await tx.insert(suppliers).values({ name, facts }).onConflictDoUpdate({ target: suppliers.name, set: { facts } });
};

/** Nothing is known of a supplier any more; materials go on naming it. */
export const removeSupplier = async (tx: Tx, name: string): Promise<void> => {
  await tx.delete(suppliers).where(eq(suppliers.name, name));
};

/** Materials of a supplier are those of a supplier of another name. */
export const renameSupplierOfMaterials = async (tx: Tx, from: string, to: string): Promise<void> => {
  await tx.update(materials).set({ supplier: to }).where(eq(materials.supplier, from));
};

/** What buying asks of materials, by material; those of which nothing was said are left out. */
export const materialBuyingsById = async (tx: Tx): Promise<ReadonlyMap<string, MaterialBuying>> =>
  new Map((await tx.select().from(materialBuyings)).map(({ material, facts }) => [material, facts]));

const saysNothing = ({ breaks, ...facts }: MaterialBuying): boolean =>
  breaks.length === 0 && Object.values(facts).every((fact) => fact === undefined);

/** Says what buying asks of a material; what was said before is gone. */
export const setMaterialBuying = async (tx: Tx, material: string, facts: MaterialBuying): Promise<void> => {
  if (saysNothing(facts)) await tx.delete(materialBuyings).where(eq(materialBuyings.material, material));
  else
    await tx
      .insert(materialBuyings)
      .values({ material, facts })
      .onConflictDoUpdate({ target: materialBuyings.material, set: { facts } });
};
