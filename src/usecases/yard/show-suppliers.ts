import { suppliersByName } from '../../../db/stores/supplier-store.ts';
import type { Supplier } from '../../../shared/supplier.ts';
import type { Weekday } from '../../../shared/time.ts';
import type { UseCaseContext } from '../core/context.ts';
import type { FormFields } from '../typed/form-fields.ts';
import { plainDays, supplierTexts } from '../typed/supplier-form.ts';
import { plainSupplier } from './edit-supplier.ts';
import { showYardFrame, type YardPageHead } from './show-yard-frame.ts';

/** A supplier as its line and its form show it. */
export interface YardSupplier extends Supplier {
  /** It is known by its name. */
  id: string;
  /** The days of the week on which it is open, and brings things; null where a rule says it. */
  openDays: readonly string[] | null;
  deliveryDays: readonly string[] | null;
  /** What comes from it. */
  sells: readonly string[];
  /** What each field of the form shows. */
  texts: FormFields;
  guesses: readonly string[];
}

/** Who sells things, with those whom a material names. */
export interface SuppliersModel extends YardPageHead {
  currency: string;
  weekStart: Weekday;
  suppliers: readonly YardSupplier[];
}

/** Who sells things: all that is known of them, and those whom a material names and of whom nothing else is known. */
export const showSuppliers = async (context: UseCaseContext): Promise<SuppliersModel> => {
  const { yard, yardName, today, system, habits } = await showYardFrame(context);
  const known = new Map((await context.database.read(suppliersByName)).map((one) => [one.name, one]));
  const named = yard.materials.flatMap(({ supplier }) => supplier ?? []);
  const names = [...new Set([...known.keys(), ...named])].sort((a, b) => a.localeCompare(b));
  const suppliers = names.map((name) => {
    const one = known.get(name) ?? plainSupplier(name);
    return {
      ...one,
      id: name,
      openDays: plainDays(one.opens),
      deliveryDays: plainDays(one.delivers),
      sells: yard.materials.filter(({ supplier }) => supplier === name).map((material) => material.name),
      texts: supplierTexts(one, { today, system, currency: habits.currency }),
      guesses: [],
    };
  });
  return { yardName, today, system, currency: habits.currency, weekStart: habits.weekStart, suppliers };
};
