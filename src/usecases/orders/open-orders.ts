import { openOrders, type StoredOrder } from '../../../db/stores/order-store.ts';
import type { UseCaseContext } from '../core/context.ts';
import type { PlanAtHand } from '../plan/plan-at-hand.ts';

/** Read once beside a plan: an order that is changed is planned anew. */
const known = new WeakMap<PlanAtHand, readonly StoredOrder[]>();

/** The open orders that the plan at hand is for, in the order in which they were taken. */
export const openOrdersOf = async (
  { database }: Pick<UseCaseContext, 'database'>,
  hand: PlanAtHand,
): Promise<readonly StoredOrder[]> => {
  const orders = known.get(hand) ?? (await database.read(openOrders));
  known.set(hand, orders);
  return orders;
};
