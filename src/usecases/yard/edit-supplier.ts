import type { Tx } from '../../../db/open.ts';
import { materialById, updateMaterial } from '../../../db/stores/material-store.ts';
import {
  removeSupplier,
  renameSupplierOfMaterials,
  setSupplier,
  supplierNamed,
} from '../../../db/stores/supplier-store.ts';
import { type Supplier, supplier } from '../../../shared/supplier.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { done, type Outcome, refuse, today } from '../core/context.ts';
import type { Edit } from '../plan/save-edit.ts';
import type { FormFields } from '../typed/form-fields.ts';
import { measuresOf } from '../typed/measures.ts';
import { type SupplierWriting, supplierTyped } from '../typed/supplier-form.ts';

const writingOf = async (tx: Tx, yard: YardFile): Promise<SupplierWriting> => ({
  ...(await measuresOf(tx)),
  today: today(yard.yard.timeZone, yard.yard.now),
});

const isNamed = ({ materials }: YardFile, name: string): boolean => materials.some((one) => one.supplier === name);

/** A supplier of whom nothing is known but the name. */
export const plainSupplier = (name: string): Supplier => supplier.parse({ name });

/** There is one of that name, known or named by a material. */
const taken = async (tx: Tx, yard: YardFile, name: string): Promise<boolean> =>
  isNamed(yard, name) || (await supplierNamed(tx, name)) !== null;

const TAKEN = 'There is a supplier of that name already.';

/** How long things from it took: as was said, or as all of them do. */
const tookDays = ({ materials }: YardFile, { name, leadDays }: Supplier): number | undefined => {
  if (leadDays !== undefined) return leadDays;
  const days = new Set(materials.flatMap((one) => (one.supplier === name ? (one.leadDays ?? []) : [])));
  return days.size === 1 ? [...days][0] : undefined;
};

/** Materials that took as long as the supplier did take as long as it does now. */
const passLeadOn = async (tx: Tx, yard: YardFile, before: Supplier, after: Supplier): Promise<void> => {
  const [took, { leadDays }] = [tookDays(yard, before), after];
  if (took === undefined || leadDays === undefined || leadDays === took) return;
  for (const { id, supplier: of } of yard.materials)
    if (of === before.name && (await materialById(tx, id))?.leadDays === took)
      await updateMaterial(tx, id, { leadDays });
};

/** Somebody who sells things. */
export const addSupplier = (typed: FormFields): Edit<string> => ({
  what: { kind: 'supplier added', words: (name) => `${name} added to the suppliers` },
  work: async (tx, yard): Promise<Outcome<string>> => {
    const read = supplierTyped(typed, null, await writingOf(tx, yard));
    if (!read.ok) return read;
    if (await taken(tx, yard, read.value.name)) return refuse('name', TAKEN);
    await setSupplier(tx, read.value);
    return done(read.value.name);
  },
});

/** When a supplier is there and what it asks for; its materials go with another name. */
export const editSupplier = (name: string, typed: FormFields): Edit<string> => ({
  what: { kind: 'supplier set', words: (now) => `${now} changed` },
  work: async (tx, yard): Promise<Outcome<string>> => {
    const known = await supplierNamed(tx, name);
    if (!known && !isNamed(yard, name)) return refuse('name', 'That supplier is not there any more.');
    const before = known ?? plainSupplier(name);
    const read = supplierTyped(typed, before, await writingOf(tx, yard));
    if (!read.ok) return read;
    const after = read.value;
    if (after.name !== name) {
      if (await taken(tx, yard, after.name)) return refuse('name', TAKEN);
      await removeSupplier(tx, name);
      await renameSupplierOfMaterials(tx, name, after.name);
    }
    await setSupplier(tx, after);
    await passLeadOn(tx, yard, before, after);
    return done(after.name);
  },
});

/** A supplier is gone; refused where materials come from it. */
export const removeSupplierEntry = (name: string): Edit<string> => ({
  what: { kind: 'supplier removed', words: (gone) => `${gone} removed from the suppliers` },
  work: async (tx, yard): Promise<Outcome<string>> => {
    const sold = yard.materials.filter((one) => one.supplier === name).map((one) => one.name);
    if (sold.length > 0)
      return refuse('uses', `${name} sells ${sold.slice(0, 6).join(', ')}${sold.length > 6 ? ' and more' : ''}.`);
    await removeSupplier(tx, name);
    return done(name);
  },
});
