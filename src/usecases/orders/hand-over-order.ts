import { freeSetAside, updateOrder } from '../../../db/stores/order-store.ts';
import { done, type Outcome, refuse, today, type UseCaseContext } from '../core/context.ts';
import { type Changed, changing } from '../plan/changing.ts';
import { takeOrderGoods } from '../plan/take-order-goods.ts';
import { openOrder, orderName } from './open-order.ts';

/**
 * The customer has it: its pieces, parts and cut lengths leave the stock, unless it was packed and they have left it
 * already. When the stock book is short of pieces it is refused with the shortfall in words, unless `evenShort` says that
 * the maker has counted and hands over all the same.
 */
export const handOverOrder = (
  context: UseCaseContext,
  id: string,
  { evenShort }: { evenShort: boolean },
): Promise<Outcome<Changed<{ name: string }>>> =>
  changing(
    context,
    { kind: 'order handed over', words: ({ name }) => `Order ${id} handed over (${name})` },
    async (tx, yard) => {
      const found = await openOrder(tx, id);
      if (!found.ok) return found;
      const short = found.value.packedAt === null ? await takeOrderGoods(tx, found.value, yard, context.now) : null;
      if (short && !evenShort)
        return refuse(
          'evenShort',
          `By the stock book these are not in the yard yet: ${short}. Nothing was handed over.`,
        );
      await freeSetAside(tx, id);
      const day = today(yard.yard.timeZone, context.now);
      await updateOrder(tx, id, { status: 'handed over', handedOverOn: day, heldUntil: null });
      return done({ name: orderName(found.value) });
    },
  );
