import type { Tx } from '../../../db/open.ts';
import { setTyped } from '../../../db/stores/figure-store.ts';
import { addIncoming, materialById } from '../../../db/stores/material-store.ts';
import type { FigureOf } from '../../../shared/figure.ts';
import { done, type Outcome, refuse, today, type UseCaseContext } from '../core/context.ts';
import { type Changed, changing } from '../plan/changing.ts';
import { worthKeeping } from '../typed/amount-typed.ts';
import { measuresOf } from '../typed/measures.ts';
import { type PurchaseTyped, purchaseRead } from '../typed/purchase-form.ts';

/** What was typed for goods on their way stands beside their material: "2 lb" is seen again as "2 lb". */
export const incomingFigure = (material: string, id: number): FigureOf => ({
  ...{ kind: 'material', id: material, figure: `incoming ${id}` },
});

const bought = async (tx: Tx, typed: PurchaseTyped, day: string): Promise<Outcome<{ name: string }>> => {
  const material = await materialById(tx, typed.material);
  if (!material) return refuse('material', 'Choose what was bought from the list.');
  const purchase = purchaseRead(typed, material.unit, await measuresOf(tx), day);
  if (!purchase.ok) return purchase;
  const id = await addIncoming(tx, { material: material.id, ...purchase.value, boughtOn: day });
  const kept = worthKeeping(typed.quantity.text);
  if (kept !== null) await setTyped(tx, incomingFigure(material.id, id), kept);
  return done({ name: material.name });
};

/** It is bought, and on its way until it arrives. */
export const buyMaterial = (
  context: UseCaseContext,
  typed: PurchaseTyped,
): Promise<Outcome<Changed<{ name: string }>>> =>
  changing(context, { kind: 'bought', words: ({ name }) => `${name} bought` }, (tx, yard) =>
    bought(tx, typed, today(yard.yard.timeZone, context.now)),
  );
