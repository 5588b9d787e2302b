import { openNotices } from '../../db/stores/change-store.ts';
import { openOrders, pastOrders } from '../../db/stores/order-store.ts';
import { today, type UseCaseContext } from './context.ts';
import { currentPlan } from './make-plan.ts';
import { measuresOf } from './measures.ts';
import { type OrderFacts, orderFacts, ordersSeen } from './order-facts.ts';

const PAST_SHOWN = 60;

/** Orders by the day on which they can be handed over, the soonest first; those that cannot be made stand apart. */
const byDay = (orders: readonly OrderFacts[]) => {
  const days = new Map<string, OrderFacts[]>();
  for (const order of orders) if (order.readyOn) days.set(order.readyOn, [...(days.get(order.readyOn) ?? []), order]);
  return [...days].sort(([a], [b]) => a.localeCompare(b)).map(([date, list]) => ({ date, orders: list }));
};

/** Every open order, grouped by its day of hand-over by today's plan. */
export const showOrders = async (context: UseCaseContext) => {
  const { plan, yard } = await currentPlan(context);
  const { stored, notices, system } = await context.database.read(async (tx) => ({
    stored: await openOrders(tx),
    notices: await openNotices(tx),
    system: (await measuresOf(tx)).system,
  }));
  const seen = ordersSeen({ plan, yard }, system, context.now);
  const orders = stored.map((order) => orderFacts(order, seen));
  return {
    yardName: yard.yard.name,
    today: today(yard.yard.timeZone, context.now),
    days: byDay(orders),
    cannotBeMade: orders.filter((order) => order.readyOn === null),
    notices: notices.map(({ id, words }) => ({ id, words })),
  };
};

/** Orders handed over, cancelled or lapsed, the newest first. */
export const showPastOrders = async (context: UseCaseContext) => {
  const { plan, yard } = await currentPlan(context);
  const { stored, system } = await context.database.read(async (tx) => ({
    stored: await pastOrders(tx, PAST_SHOWN),
    system: (await measuresOf(tx)).system,
  }));
  const seen = ordersSeen({ plan, yard }, system, context.now);
  return {
    yardName: yard.yard.name,
    today: today(yard.yard.timeZone, context.now),
    orders: stored.map((order) => orderFacts(order, seen)),
  };
};
