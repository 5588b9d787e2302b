import { setTyped } from '../../../db/stores/figure-store.ts';
import { incomingById, materialById, removeIncoming } from '../../../db/stores/material-store.ts';
import { done, type Outcome, refuse, type UseCaseContext } from '../core/context.ts';
import { type Changed, changing } from '../plan/changing.ts';
import { incomingFigure } from './buy-material.ts';

/** Goods that were thought to be on their way are not coming. */
export const giveUpPurchase = (context: UseCaseContext, id: number): Promise<Outcome<Changed<{ name: string }>>> =>
  changing(context, { kind: 'not coming', words: ({ name }) => `${name} is not coming` }, async (tx) => {
    const goods = await incomingById(tx, id);
    if (!goods || goods.arrivedOn !== null)
      return refuse('goods', 'That has arrived already, or is no longer on its way. Nothing was changed.');
    await removeIncoming(tx, id);
    await setTyped(tx, incomingFigure(goods.material, id), null);
    const material = await materialById(tx, goods.material);
    return done({ name: material?.name ?? goods.material });
  });
