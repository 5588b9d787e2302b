import { habitsOfYard } from '../../../db/stores/habits-store.ts';
import { askedAndPaid } from '../../../db/stores/money-store.ts';
import { ordersOfIds, type StoredOrder } from '../../../db/stores/order-store.ts';
import { fromMinor, toMinor } from '../../engine/cost/minor-units.ts';
import type { UseCaseContext } from '../core/context.ts';

/**
 * What is still to be paid for an order, in minor units; below 0 it is to be paid back. Of an order that came to nothing all
 * that was paid is to be paid back. Null where no price is said.
 *
 * Example: of 880 asked 260 are paid: 620.
 */
export const owingOf = (status: StoredOrder['status'], price: number | null, paid: number): number | null => {
  if (status === 'cancelled' || status === 'lapsed') return paid === 0 ? 0 : -paid;
  return price === null ? null : price - paid;
};

/** What one order owes, or is owed. */
interface OwingOrder {
  id: string;
  customer: string | null;
  status: StoredOrder['status'];
  handedOverOn: string | null;
  /** In the yard's money; below 0 it is to be paid back. */
  owing: number;
}

/** Who owes what. */
export interface OwingModel {
  currency: string;
  /** Handed over and not paid for, or to be paid back: the longest gone first. */
  now: readonly OwingOrder[];
  /** Of orders that are open: what is still to be paid, by number. */
  open: ReadonlyMap<string, number>;
}

/** Who owes what, and to whom money is to go back. */
export const showOwing = (context: UseCaseContext): Promise<OwingModel> =>
  context.database.read(async (tx) => {
    const { currency } = await habitsOfYard(tx);
    const known = await askedAndPaid(tx);
    const orders = new Map(
      (
        await ordersOfIds(
          tx,
          known.map(({ order }) => order),
        )
      ).map((order) => [order.id, order]),
    );
    const owing = known.flatMap(({ order: id, price, paid }): OwingOrder[] => {
      const order = orders.get(id);
      if (!order) return [];
      const minor = owingOf(order.status, price === null ? null : toMinor(price, currency), toMinor(paid, currency));
      if (minor === null || minor === 0) return [];
      const { customer, status, handedOverOn } = order;
      return [{ id, customer: customer?.name ?? null, status, handedOverOn, owing: fromMinor(minor, currency) }];
    });
    const isNow = ({ status, owing: due }: OwingOrder) => status !== 'open' || due < 0;
    return {
      currency,
      now: owing.filter(isNow).sort((a, b) => ((a.handedOverOn ?? '9') < (b.handedOverOn ?? '9') ? -1 : 1)),
      open: new Map(owing.filter((one) => !isNow(one)).map(({ id, owing: due }) => [id, due])),
    };
  });
