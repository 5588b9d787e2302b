import { addIncoming, materialById } from '../../db/stores/material-store.ts';
import type { Fault } from '../../shared/fault.ts';
import { type Changed, changing } from './changing.ts';
import { done, type Outcome, refuse, today, type UseCaseContext } from './context.ts';

export interface Purchase {
  material: string;
  quantity: number;
  /** The day it is expected. */
  on: string;
  /** What all of it costs; null when nobody wrote it down. */
  price: number | null;
}

const purchaseFaults = ({ quantity, on }: Purchase, day: string): Fault[] => [
  ...(quantity > 0 ? [] : [{ path: 'quantity', message: 'How much was bought? Write a number above 0.' }]),
  ...(on >= day
    ? []
    : [{ path: 'on', message: 'That day has passed. If it has come already, count the stock instead.' }]),
];

/** It is bought, and on its way until it arrives. */
export const buyMaterial = (context: UseCaseContext, purchase: Purchase): Promise<Outcome<Changed<{ name: string }>>> =>
  changing(context, { kind: 'bought', words: ({ name }) => `${name} bought` }, async (tx, yard) => {
    const material = await materialById(tx, purchase.material);
    if (!material) return refuse('material', 'Choose what was bought from the list.');
    const day = today(yard.yard.timeZone, context.now);
    const faults = purchaseFaults(purchase, day);
    if (faults.length > 0) return { ok: false, faults };
    await addIncoming(tx, { ...purchase, boughtOn: day });
    return done({ name: material.name });
  });
