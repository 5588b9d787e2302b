import { typedOf } from '../../../db/stores/figure-store.ts';
import { materialsInOrder } from '../../../db/stores/material-store.ts';
import { materialBuyingsById } from '../../../db/stores/supplier-store.ts';
import type { Material } from '../../../shared/material.ts';
import { countedOnHand } from '../../engine/cut/offcuts.ts';
import { shownUnit } from '../../engine/units/material-unit.ts';
import { arrivalsThatKeep, type KeepingFacts, keepingOf, keepingShown } from '../buying/keeping-facts.ts';
import { materialUsesYielding } from '../buying/material-uses.ts';
import type { UseCaseContext } from '../core/context.ts';
import type { FormFields } from '../typed/form-fields.ts';
import { materialBuyingTexts, NO_BUYING } from '../typed/material-buying-form.ts';
import { materialTexts } from '../typed/material-figures.ts';
import { withOwnLead } from '../typed/material-form.ts';
import { shownAmount } from '../typed/measures.ts';
import { OFFCUTS_EXAMPLE } from '../typed/offcuts-typed.ts';
import { SIZES_EXAMPLE } from '../typed/sizes-typed.ts';
import { showYardFrame, type YardPageHead } from './show-yard-frame.ts';

interface Amount {
  quantity: number;
  unit: string;
}

/** A material as its line and its form show it; amounts in the unit that is shown. */
export interface YardMaterial extends Material {
  inYard: Amount;
  packOf: Amount;
  /** Always kept. */
  keep: Amount;
  shownUnit: string;
  /** Null where it does not go off. */
  keeping: KeepingFacts | null;
  /** What each field of the form shows. */
  texts: FormFields;
  /** Names of the figures that are guesses. */
  guesses: readonly string[];
}

/** The stock book. */
export interface YardStockModel extends YardPageHead {
  currency: string;
  materials: readonly YardMaterial[];
  suppliers: readonly string[];
  /** How offcuts may be typed. */
  offcutsExample: string;
  /** How rests of sheets may be typed. */
  restsExample: string;
}

/** The stock book: each material as the forms show it, in the yard's units, and who sells what. */
export const showYardStock = async (context: UseCaseContext): Promise<YardStockModel> => {
  const { yard, plan, yardName, today, system, habits, guesses } = await showYardFrame(context);
  const { typed, arrivals, buyings, own } = await context.database.read(async (tx) => ({
    typed: await Promise.all(yard.materials.map(({ id }) => typedOf(tx, { kind: 'material', id }))),
    arrivals: await arrivalsThatKeep(tx, yard),
    buyings: await materialBuyingsById(tx),
    own: new Map((await materialsInOrder(tx)).map(({ id, leadDays }) => [id, leadDays])),
  }));
  const uses = await materialUsesYielding(yard, plan);
  const keepingIn = (material: Material): KeepingFacts | null => {
    const of = { uses: uses.get(material.id) ?? [], arrivals: arrivals.get(material.id) ?? [], supplies: [] };
    const keeping = keepingOf(material, { yard, today, ...of });
    return keeping && keepingShown(keeping, shownUnit(material.unit, system).perUnit);
  };
  const ownMaterials = yard.materials.map((material) => withOwnLead(material, own.get(material.id) ?? null));
  const materials = ownMaterials.map((material, index) => ({
    ...material,
    inYard: shownAmount({ quantity: countedOnHand(material), unit: material.unit }, system),
    packOf: shownAmount({ quantity: material.pack, unit: material.unit }, system),
    keep: shownAmount({ quantity: material.minimum, unit: material.unit }, system),
    shownUnit: shownUnit(material.unit, system).word,
    keeping: keepingIn(material),
    texts: {
      ...materialTexts(material, { system, currency: habits.currency, typed: typed[index] ?? {} }),
      ...materialBuyingTexts(buyings.get(material.id) ?? NO_BUYING, material, { system, currency: habits.currency }),
    },
    guesses: guesses.filter((one) => one.kind === 'material' && one.id === material.id).map(({ figure }) => figure),
  }));
  const suppliers = [...new Set(yard.materials.flatMap(({ supplier }) => supplier ?? []))].sort();
  return {
    yardName,
    today,
    system,
    currency: habits.currency,
    materials,
    suppliers,
    offcutsExample: OFFCUTS_EXAMPLE[system],
    restsExample: SIZES_EXAMPLE[system],
  };
};
