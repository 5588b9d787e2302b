import type { Tx } from '../../../db/open.ts';
import { orderById, type StoredOrder } from '../../../db/stores/order-store.ts';
import { thereIsNo } from '../../../shared/said-back.ts';
import { done, type Outcome, refuse } from '../core/context.ts';

const STATUS_WORDS: Record<Exclude<StoredOrder['status'], 'open'>, string> = {
  'handed over': 'was handed over',
  cancelled: 'was cancelled',
  lapsed: 'lapsed when its hold ran out',
};

/** The order of that number, if it can still be changed. */
export const openOrder = async (tx: Tx, id: string): Promise<Outcome<StoredOrder>> => {
  const order = await orderById(tx, id);
  if (!order) return refuse('order', thereIsNo('order', id));
  if (order.status !== 'open')
    return refuse('order', `Order ${id} ${STATUS_WORDS[order.status]}. Nothing was changed.`);
  return done(order);
};

/** Whether an order is packed, all of it or some: all that it is made of has left the stock. */
export const hasLeftStock = ({ packedAt, packedMinutes }: Pick<StoredOrder, 'packedAt' | 'packedMinutes'>): boolean =>
  packedAt !== null || packedMinutes !== null;

/**
 * Whether some of an open order can go out before the rest: it is not packed, more than one thing, and not only of parts that
 * are bought, for they go with the rest.
 */
export const canGoInParts = (order: StoredOrder): boolean =>
  order.status === 'open' &&
  !hasLeftStock(order) &&
  order.lines.reduce((sum, { quantity }) => sum + quantity, 0) > 1 &&
  order.lines.some(({ material }) => material === undefined);

/** The order of that number, if some of it is still to be packed. */
export const orderToPack = async (tx: Tx, id: string): Promise<Outcome<StoredOrder>> => {
  const found = await openOrder(tx, id);
  if (!found.ok || found.value.packedAt === null) return found;
  return refuse('order', `Order ${id} is packed. Unpack it on Today first. Nothing was changed.`);
};

/** The order of that number, if what it is made of can still be changed: a packed one has to be unpacked first. */
export const unpackedOrder = async (tx: Tx, id: string): Promise<Outcome<StoredOrder>> => {
  const found = await orderToPack(tx, id);
  if (!found.ok || !hasLeftStock(found.value)) return found;
  return refuse('order', `Order ${id} is packed in part. Unpack it on Today first. Nothing was changed.`);
};

/** "School garden", or "order 27-014" when no customer is written down. */
export const orderName = ({ id, customer }: Pick<StoredOrder, 'id' | 'customer'>): string =>
  customer?.name ?? `order ${id}`;
