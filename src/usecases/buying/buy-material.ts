import type { Tx } from '../../../db/open.ts';
import { setTyped } from '../../../db/stores/figure-store.ts';
import { addIncoming, materialById } from '../../../db/stores/material-store.ts';
import type { FigureOf } from '../../../shared/figure.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { todayIn } from '../../engine/book/today-in.ts';
import { done, type Outcome, refuse, type UseCaseContext } from '../core/context.ts';
import { onDayWords } from '../core/day-words.ts';
import { type Changed, changing } from '../plan/changing.ts';
import { worthKeeping } from '../typed/amount-typed.ts';
import { lastDay } from '../typed/last-day.ts';
import { measuresOf } from '../typed/measures.ts';
import { type PurchaseTyped, purchaseRead } from '../typed/purchase-form.ts';

/** What was typed for goods on their way stands beside their material: "2 lb" is seen again as "2 lb". */
export const incomingFigure = (material: string, id: number): FigureOf => ({
  ...{ kind: 'material', id: material, figure: `incoming ${id}` },
});

interface Bought {
  name: string;
  /** When it is expected, in words. */
  day: string;
}

const bought = async (tx: Tx, typed: PurchaseTyped, yard: YardFile): Promise<Outcome<Bought>> => {
  const day = todayIn(yard);
  const material = await materialById(tx, typed.material);
  if (!material) return refuse('material', 'Choose what was bought from the list.');
  const purchase = purchaseRead(typed, material, await measuresOf(tx), { today: day, last: lastDay(yard) });
  if (!purchase.ok) return purchase;
  const id = await addIncoming(tx, { material: material.id, ...purchase.value, boughtOn: day });
  const kept = worthKeeping(typed.quantity.text);
  if (kept !== null) await setTyped(tx, incomingFigure(material.id, id), kept);
  return done({ name: material.name, day: onDayWords(purchase.value.on, day) });
};

/** It is bought, and on its way until it arrives. */
export const buyMaterial = (context: UseCaseContext, typed: PurchaseTyped): Promise<Outcome<Changed<Bought>>> =>
  changing(context, { kind: 'bought', words: ({ name, day }) => `${name} bought, expected ${day}` }, (tx, yard) =>
    bought(tx, typed, yard),
  );
