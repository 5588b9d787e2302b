import { addFinished } from '../../../db/stores/finished-store.ts';
import { addToStock } from '../../../db/stores/material-store.ts';
import { updateOrder } from '../../../db/stores/order-store.ts';
import { done, type Outcome, refuse, type UseCaseContext } from '../core/context.ts';
import { type Changed, changing } from '../plan/changing.ts';
import { takeCuts } from '../plan/cut-lengths.ts';
import { piecesOfOrder } from '../plan/pieces-of-order.ts';
import { openOrder, orderName } from './open-order.ts';

/** A packed order comes apart again: its pieces are set aside for it, its parts and lengths are in stock. */
export const unpackOrder = (context: UseCaseContext, id: string): Promise<Outcome<Changed<{ name: string }>>> =>
  changing(context, { kind: 'unpacked', words: ({ name }) => `Unpacked for ${name}` }, async (tx, yard) => {
    const found = await openOrder(tx, id);
    if (!found.ok) return found;
    if (found.value.packedAt === null) return refuse('order', `Order ${id} is not packed. Nothing was changed.`);
    const { pieces, parts, cuts } = piecesOfOrder(found.value.lines, yard);
    for (const [casting, count] of pieces)
      if (count > 0) await addFinished(tx, { casting, count, readyAt: null, order: id });
    for (const [material, quantity] of parts) await addToStock(tx, material, quantity);
    await takeCuts(
      tx,
      yard,
      cuts.map((cut) => ({ ...cut, count: -cut.count })),
    );
    await updateOrder(tx, id, { packedAt: null });
    return done({ name: orderName(found.value) });
  });
