import type { StoredOrder } from '../../../db/stores/order-store.ts';
import { type Slip, slipOfWeight } from '../../../shared/order.ts';
import { type PlanFile, spellsOf } from '../../../shared/plan.ts';
import { minuteOf } from '../../../shared/time.ts';
import type { UnitSystem } from '../../../shared/units.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { today } from '../core/context.ts';
import { reasonShown } from '../plan/reason-shown.ts';
import { type ContentsLine, contentsOf, type Offer, offersOf } from './order-contents.ts';

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

/** One order as the pages speak of it: what was agreed, and what today's plan makes of it. Dates are days of the yard. */
export interface OrderFacts {
  id: string;
  /** A walk-in's is not recorded. */
  customer: string | null;
  phone: string | null;
  customerNote: string | null;
  note: string | null;
  address: string | null;
  contents: readonly ContentsLine[];
  status: StoredOrder['status'];
  /** The day the customer would like. */
  wantedOn: string | null;
  /** Nothing is poured for it before that day. */
  notBefore: string | null;
  /** The day the customer was told. */
  promisedOn: string | null;
  /** The last day of a hold; null where none is given. */
  heldUntil: string | null;
  handedOverOn: string | null;
  /** The order of which it is a part that went out before the rest. */
  partOf: string | null;
  slip: Slip;
  /** The first day on which it can be handed over, by today's plan; null when it cannot be made. */
  readyOn: string | null;
  /** When it is packed by the plan, and how long in minutes; more than one where it takes several sessions. */
  packings: readonly { at: string; minutes: number }[];
  /** Nothing is left to do for it. */
  inYard: boolean;
  /** Its goods have left the stock and it waits to be handed over. */
  packed: boolean;
  /** The day on which it was packed; null where it is not. */
  packedOn: string | null;
  /** Minutes of its packing that are done, where more of it is left; its goods have left the stock. Null for none. */
  packedMinutes: number | null;
  /** Why it cannot be made, in the yard's units; null when it can. */
  reason: string | null;
}

/** The facts of an order, given the plan, the yard and the units it is seen with. */
export const orderFacts = (order: StoredOrder, { yard, offers, system, now, ...seen }: OrdersSeen): OrderFacts => {
  const planned = seen.planned.get(order.id);
  const unplanned = seen.unplanned.get(order.id);
  return {
    id: order.id,
    customer: order.customer?.name ?? null,
    phone: order.customer?.phone ?? null,
    customerNote: order.customer?.note ?? null,
    note: order.note,
    address: order.address,
    contents: contentsOf(order.lines, offers),
    status: order.status,
    wantedOn: order.wantedOn,
    notBefore: order.notBefore,
    promisedOn: order.promisedOn,
    heldUntil: order.heldUntil,
    handedOverOn: order.handedOverOn,
    partOf: order.partOf,
    slip: slipOfWeight(order.weight),
    readyOn: planned?.completesOn ?? null,
    packings: (planned ? spellsOf(planned) : []).map(({ packStart, packEnd }) => ({
      ...{ at: packStart, minutes: minuteOf(packEnd) - minuteOf(packStart) },
    })),
    inYard: planned !== undefined && minuteOf(planned.completesAt) <= minuteOf(now),
    packed: order.packedAt !== null,
    packedOn: order.packedAt && today(yard.yard.timeZone, order.packedAt),
    packedMinutes: order.packedMinutes,
    reason: reasonShown(unplanned?.reason ?? null, yard.materials, system),
  };
};
