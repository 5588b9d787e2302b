import type { StoredOrder } from '../../../db/stores/order-store.ts';
import { slipOfWeight } from '../../../shared/order.ts';
import type { PlanFile } from '../../../shared/plan.ts';
import { minuteOf } from '../../../shared/time.ts';
import type { UnitSystem } from '../../../shared/units.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { reasonShown } from '../plan/reason-shown.ts';
import { contentsOf, type Offer, offersOf } from './order-contents.ts';

/** What orders are seen beside. */
export interface OrdersSeen {
  /** By id. */
  planned: ReadonlyMap<string, PlanFile['orders'][number]>;
  unplanned: ReadonlyMap<string, PlanFile['unplanned'][number]>;
  yard: YardFile;
  offers: readonly Offer[];
  system: UnitSystem;
  now: string;
}

/** The same for all orders of a page. */
export const ordersSeen = (
  { plan, yard }: { plan: PlanFile; yard: YardFile },
  system: UnitSystem,
  now: string,
): OrdersSeen => ({
  planned: new Map(plan.orders.map((order) => [order.id, order])),
  unplanned: new Map(plan.unplanned.map((order) => [order.order, order])),
  ...{ yard, offers: offersOf(yard, system), system, now },
});

/** One order as the pages speak of it: what was agreed, and what today's plan makes of it. */
export const orderFacts = (order: StoredOrder, { yard, offers, system, now, ...seen }: OrdersSeen) => {
  const planned = seen.planned.get(order.id);
  const unplanned = seen.unplanned.get(order.id);
  return {
    id: order.id,
    customer: order.customer?.name ?? null,
    phone: order.customer?.phone ?? null,
    customerNote: order.customer?.note ?? null,
    note: order.note,
    contents: contentsOf(order.lines, offers),
    status: order.status,
    wantedOn: order.wantedOn,
    promisedOn: order.promisedOn,
    heldUntil: order.heldUntil,
    handedOverOn: order.handedOverOn,
    slip: slipOfWeight(order.weight),
    /** The first day on which it can be handed over, by today's plan; null when it cannot be made. */
    readyOn: planned?.completesOn ?? null,
    packStart: planned?.packStart ?? null,
    /** Nothing is left to do for it. */
    inYard: planned !== undefined && minuteOf(planned.completesAt) <= minuteOf(now),
    /** Its goods have left the stock and it waits to be handed over. */
    packed: order.packedAt !== null,
    reason: reasonShown(unplanned?.reason ?? null, yard.materials, system),
  };
};
export type OrderFacts = ReturnType<typeof orderFacts>;
