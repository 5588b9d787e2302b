import { freeSetAside, updateOrder } from '../../../db/stores/order-store.ts';
import { done, type Outcome, type UseCaseContext } from '../core/context.ts';
import { type Changed, changing } from '../plan/changing.ts';
import { orderName, unpackedOrder } from './open-order.ts';

/** Takes an open order out of the plan. What was set aside for it becomes stock. */
export const cancelOrder = (context: UseCaseContext, id: string): Promise<Outcome<Changed<{ name: string }>>> =>
  changing(context, { kind: 'order cancelled', words: ({ name }) => `Order ${id} cancelled (${name})` }, async (tx) => {
    const found = await unpackedOrder(tx, id);
    if (!found.ok) return found;
    await updateOrder(tx, id, { status: 'cancelled' });
    await freeSetAside(tx, id);
    return done({ name: orderName(found.value) });
  });
