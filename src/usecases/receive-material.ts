import type { Tx } from '../../db/open.ts';
import {
  addIncoming,
  addToStock,
  incomingById,
  markArrived,
  materialById,
  type StoredIncoming,
} from '../../db/stores/material-store.ts';
import { type Changed, changing } from './changing.ts';
import { done, type Outcome, refuse, today, type UseCaseContext } from './context.ts';

const ARRIVED_ALREADY = 'That has arrived already, or is no longer on its way. Nothing was changed.';

/** Fewer came than were bought: what came is in stock, the rest is on its way still. */
const keepRestComing = async (tx: Tx, goods: StoredIncoming, came: number, day: string): Promise<void> => {
  const { material, quantity, on, boughtOn } = goods;
  await addToStock(tx, material, came - quantity);
  if (came < quantity)
    await addIncoming(tx, { material, quantity: quantity - came, on: on < day ? day : on, boughtOn, price: null });
};

/** Goods on their way have come: into stock. `came` is how much, where it is not what was bought. */
export const receiveMaterial = (
  context: UseCaseContext,
  id: number,
  came: number | null,
): Promise<Outcome<Changed<{ name: string }>>> =>
  changing(context, { kind: 'arrived', words: ({ name }) => `${name} arrived` }, async (tx, yard) => {
    const goods = await incomingById(tx, id);
    if (!goods || goods.arrivedOn !== null) return refuse('goods', ARRIVED_ALREADY);
    if (came !== null && came <= 0) return refuse('came', 'How much came? Write a number above 0.');
    const day = today(yard.yard.timeZone, context.now);
    await markArrived(tx, id, day);
    if (came !== null && came !== goods.quantity) await keepRestComing(tx, goods, came, day);
    const material = await materialById(tx, goods.material);
    return done({ name: material?.name ?? goods.material });
  });
