import { z } from 'zod';
import { amount, id, wholePositive } from './number.ts';
import { orderLine } from './order.ts';
import { date, instant } from './time.ts';

/** What became of an order. Only open ones are in a yard file. A hold that ran out is "lapsed". */
export const ORDER_STATUSES = ['open', 'handed over', 'cancelled', 'lapsed'] as const;
/** One of `ORDER_STATUSES`. Only an open order is planned. */
export type OrderStatus = (typeof ORDER_STATUSES)[number];

/**
 * An order with all that is known of it. `customer` is a customer's number (`customer.ts`); dates are of the yard's
 * zone. What a yard file calls `due` is `promisedOn`, what it calls `wanted` is `wantedOn`; `firstPromisedOn` was promised first. After `heldUntil` a hold has run
 * out. With `packedMinutes` some of it is packed, and more of its packing is left. `partOf` is the number of
 * the order of which it went out before the rest; `address` is where it is taken.
 */
export const archivedOrder = z.strictObject({
  id,
  status: z.enum(ORDER_STATUSES),
  customer: wholePositive.optional(),
  wantedOn: date.optional(),
  notBefore: date.optional(),
  promisedOn: date.optional(),
  firstPromisedOn: date.optional(),
  heldUntil: date.optional(),
  weight: amount,
  note: z.string().optional(),
  address: z.string().optional(),
  takenAt: instant.optional(),
  handedOverOn: date.optional(),
  packedAt: instant.optional(),
  packedMinutes: wholePositive.optional(),
  partOf: id.optional(),
  lines: z.array(orderLine),
});
