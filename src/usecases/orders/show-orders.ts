import { openNotices } from '../../../db/stores/change-store.ts';
import { pastOrders } from '../../../db/stores/order-store.ts';
import { today, type UseCaseContext } from '../core/context.ts';
import type { OpenNotice, PageHead } from '../core/page-parts.ts';
import { mapYielding } from '../core/yield-thread.ts';
import { currentPlan } from '../plan/make-plan.ts';
import { measuresOf } from '../typed/measures.ts';
import { foundOrders, foundPast, type OrderSearch, type WhichPast } from './find-orders.ts';
import { openOrdersOf } from './open-orders.ts';
import { type OrderFacts, orderFacts, ordersSeen } from './order-facts.ts';
import { type OrdersOfDay, ordersShown } from './orders-shown.ts';

const PAST_SHOWN = 60;
const NO_LIMIT = -1;

/** The open orders that are looked for. */
export interface OrdersModel extends PageHead {
  search: OrderSearch;
  /** How many are open, found or not. */
  all: number;
  days: readonly OrdersOfDay[];
  /** Those of them that stand on this page, from which day on, and where the page after it begins. */
  shown: readonly OrdersOfDay[];
  from: string | null;
  laterFrom: string | null;
  cannotBeMade: readonly OrderFacts[];
  notices: readonly OpenNotice[];
}

/** The past orders that are looked for, the newest first. */
export interface PastOrdersModel extends PageHead {
  search: OrderSearch<WhichPast>;
  all: number;
  /** How many are as was asked for; the page shows the first of them. */
  found: number;
  orders: readonly OrderFacts[];
}

/** Nothing is looked for. */
const EVERYTHING = { find: '', which: 'all' } as const;

/** Orders by the day on which they can be handed over, the soonest first; those that cannot be made stand apart. */
const byDay = (orders: readonly OrderFacts[]): OrdersOfDay[] => {
  const days = new Map<string, OrderFacts[]>();
  for (const order of orders) if (order.readyOn) days.set(order.readyOn, [...(days.get(order.readyOn) ?? []), order]);
  return [...days].sort(([a], [b]) => a.localeCompare(b)).map(([date, list]) => ({ date, orders: list }));
};

/** The open orders that are looked for, grouped by their day of hand-over by today's plan. */
export const showOrders = async (
  context: UseCaseContext,
  search: OrderSearch = EVERYTHING,
  from: string | null = null,
): Promise<OrdersModel> => {
  const { plan, yard, cached } = await currentPlan(context);
  const { notices, measures } = await context.database.read(async (tx) => ({
    notices: await openNotices(tx),
    measures: await measuresOf(tx),
  }));
  const seen = ordersSeen({ plan, yard }, measures.system, context.now);
  const day = today(yard.yard.timeZone, context.now);
  const all = await mapYielding(await openOrdersOf(context, cached), (order) => orderFacts(order, seen));
  const orders = foundOrders(all, search, { today: day, weekStart: measures.weekStart });
  const days = byDay(orders);
  return {
    yardName: yard.yard.name,
    today: day,
    search,
    all: all.length,
    ...{ days, from, ...ordersShown(days, from) },
    cannotBeMade: orders.filter((order) => order.readyOn === null),
    notices: notices.map(({ id, words }) => ({ id, words })),
  };
};

/** Past orders that are looked for, the newest first, and no more than a page takes. */
export const showPastOrders = async (
  context: UseCaseContext,
  search: OrderSearch<WhichPast> = EVERYTHING,
): Promise<PastOrdersModel> => {
  const { plan, yard } = await currentPlan(context);
  const { stored, system } = await context.database.read(async (tx) => ({
    stored: await pastOrders(tx, NO_LIMIT),
    system: (await measuresOf(tx)).system,
  }));
  const seen = ordersSeen({ plan, yard }, system, context.now);
  const found = foundPast(await mapYielding(stored, (order) => orderFacts(order, seen)), search);
  return {
    yardName: yard.yard.name,
    today: today(yard.yard.timeZone, context.now),
    search,
    all: stored.length,
    found: found.length,
    orders: found.slice(0, PAST_SHOWN),
  };
};
