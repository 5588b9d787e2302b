import { isDate } from '../../../shared/time.ts';
import { readMass } from '../../engine/units/mass.ts';
import { today, type UseCaseContext } from '../core/context.ts';
import type { PageHead } from '../core/page-parts.ts';
import { currentPlan } from '../plan/make-plan.ts';
import { showMeasures } from '../typed/measures.ts';
import { dayOut, type LoadFacts, loadFacts, type OrderOut, orderOut } from './going-out.ts';
import { openOrdersOf } from './open-orders.ts';
import { offersOf } from './order-contents.ts';

/** What goes out on one day. */
export interface GoingOutModel extends PageHead {
  /** The day; null where nothing goes out at all. */
  on: string | null;
  /** Every day on which something goes out, with how many orders. */
  days: readonly { date: string; count: number }[];
  orders: readonly OrderOut[];
  /** Null where there are no pieces among it. */
  load: LoadFacts | null;
  /** As it was typed. */
  payload: string;
  /** Why it could not be read. */
  payloadFault: string | null;
}

/** What is asked for: a day (the first one where it is none), and what a car or trailer carries. */
export interface GoingOutAsked {
  on?: string | undefined;
  payload?: string | undefined;
}

const payloadTyped = (typed: string, system: Parameters<typeof readMass>[1]) => {
  if (typed === '') return { kg: null, fault: null };
  const read = readMass(typed, system);
  if (!read.ok) return { kg: null, fault: read.reason };
  return read.value > 0 ? { kg: read.value, fault: null } : { kg: null, fault: 'Has to be more than nothing.' };
};

/** The orders that go out on a day by today's plan, with what has to be lifted and carried. */
export const showGoingOut = async (context: UseCaseContext, asked: GoingOutAsked = {}): Promise<GoingOutModel> => {
  const { plan, yard, cached } = await currentPlan(context);
  const { system } = await showMeasures(context);
  const day = today(yard.yard.timeZone, context.now);
  const planned = new Map(plan.orders.map((order) => [order.id, order]));
  const open = (await openOrdersOf(context, cached)).map((order) => ({
    order,
    on: dayOut(order, planned.get(order.id), day),
  }));
  const counts = new Map<string, number>();
  for (const { on } of open) if (on !== null) counts.set(on, (counts.get(on) ?? 0) + 1);
  const days = [...counts].map(([date, count]) => ({ date, count })).sort((a, b) => a.date.localeCompare(b.date));
  const on = asked.on !== undefined && isDate(asked.on) ? asked.on : (days[0]?.date ?? null);
  const orders = open.flatMap(({ order, on: goes }) => (goes !== null && goes === on ? [order] : []));
  const seen = { yard, offers: offersOf(yard, system), system };
  const payload = asked.payload?.trim() ?? '';
  const { kg, fault } = payloadTyped(payload, system);
  return {
    ...{ yardName: yard.yard.name, today: day, on, days, payload, payloadFault: fault },
    orders: orders.map((order) => orderOut(order, seen)),
    load: loadFacts(orders, kg, seen),
  };
};
