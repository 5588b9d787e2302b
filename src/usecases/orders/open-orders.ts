import { openOrders, type StoredOrder } from '../../../db/stores/order-store.ts';
import type { UseCaseContext } from '../core/context.ts';
import type { CachedPlan } from '../plan/cached-plan.ts';

/** Read once beside a plan: an order that is changed is planned anew. */
const known = new WeakMap<CachedPlan, readonly StoredOrder[]>();

/** The open orders that the cached plan is for, in the order in which they were taken. */
export const openOrdersOf = async (
  { database }: Pick<UseCaseContext, 'database'>,
  cached: CachedPlan,
): Promise<readonly StoredOrder[]> => {
  const orders = known.get(cached) ?? (await database.read(openOrders));
  known.set(cached, orders);
  return orders;
};
