import { freeSetAside, updateOrder } from '../../db/stores/order-store.ts';
import { type Changed, changing } from './changing.ts';
import { done, type Outcome, refuse, type UseCaseContext } from './context.ts';
import { orderName, unpackedOrder } from './open-order.ts';
import { takeOrderGoods } from './take-order-goods.ts';

/**
 * An order is packed: its pieces, parts and cut lengths are out of stock, and it waits to be handed over. When the stock
 * book is short of pieces it is refused, unless `evenShort` says that the maker has counted.
 */
export const packOrder = (
  context: UseCaseContext,
  id: string,
  { evenShort }: { evenShort: boolean },
): Promise<Outcome<Changed<{ name: string }>>> =>
  changing(context, { kind: 'packed', words: ({ name }) => `Packed for ${name}` }, async (tx, yard) => {
    const found = await unpackedOrder(tx, id);
    if (!found.ok) return found;
    const short = await takeOrderGoods(tx, found.value, yard, context.now);
    if (short && !evenShort)
      return refuse(
        'evenShort',
        `By the stock book these are not in the yard, or not fit to go out yet: ${short}. Nothing was packed.`,
      );
    await freeSetAside(tx, id);
    await updateOrder(tx, id, { packedAt: context.now });
    return done({ name: orderName(found.value) });
  });
