import { typedOf } from '../../../db/stores/figure-store.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { shownUnit } from '../../engine/units/material-unit.ts';
import { arrivalsThatKeep, keepingOf, keepingShown } from '../buying/keeping-facts.ts';
import { materialUsesYielding } from '../buying/material-uses.ts';
import type { UseCaseContext } from '../core/context.ts';
import { materialTexts } from '../typed/material-figures.ts';
import { shownAmount } from '../typed/measures.ts';
import { showYardFrame } from './show-yard-frame.ts';

/** The stock book: each material as the forms show it, in the yard's units, and who sells what. */
export const showYardStock = async (context: UseCaseContext) => {
  const { yard, plan, yardName, today, system, habits, guesses } = await showYardFrame(context);
  const { typed, arrivals } = await context.database.read(async (tx) => ({
    typed: await Promise.all(yard.materials.map(({ id }) => typedOf(tx, { kind: 'material', id }))),
    arrivals: await arrivalsThatKeep(tx, yard),
  }));
  const uses = await materialUsesYielding(yard, plan);
  const keepingIn = (material: YardFile['materials'][number]) => {
    const of = { uses: uses.get(material.id) ?? [], arrivals: arrivals.get(material.id) ?? [], supplies: [] };
    const keeping = keepingOf(material, { yard, today, ...of });
    return keeping && keepingShown(keeping, shownUnit(material.unit, system).perUnit);
  };
  const materials = yard.materials.map((material, index) => ({
    ...material,
    inYard: shownAmount({ quantity: material.onHand, unit: material.unit }, system),
    packOf: shownAmount({ quantity: material.pack, unit: material.unit }, system),
    keep: shownAmount({ quantity: material.minimum, unit: material.unit }, system),
    shownUnit: shownUnit(material.unit, system).word,
    keeping: keepingIn(material),
    texts: materialTexts(material, { system, currency: habits.currency, typed: typed[index] ?? {} }),
    guesses: guesses.filter((one) => one.kind === 'material' && one.id === material.id).map(({ figure }) => figure),
  }));
  const suppliers = [...new Set(yard.materials.flatMap(({ supplier }) => supplier ?? []))].sort();
  return { yardName, today, system, currency: habits.currency, materials, suppliers };
};
export type YardStockModel = Awaited<ReturnType<typeof showYardStock>>;
export type YardMaterial = YardStockModel['materials'][number];
