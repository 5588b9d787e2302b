import type { OrderFacts } from './order-facts.ts';

/** Orders that can be handed over from one day on. */
export interface OrdersOfDay {
  date: string;
  orders: readonly OrderFacts[];
}

/** So many orders stand on one page, and the rest of the last of their days. */
const ORDERS_SHOWN = 90;

/** The days of one page. */
interface DaysShown {
  shown: readonly OrdersOfDay[];
  /** The first day of the page after it; null where there is none. */
  laterFrom: string | null;
}

/**
 * Days from one on, whole ones, until they have orders for a page: all of a small yard. Without a day the page begins with the first.
 *
 * Example: of three days with 50 orders each the first two are shown, and the page after it begins with the third.
 */
export const ordersShown = (days: readonly OrdersOfDay[], from: string | null): DaysShown => {
  const rest = from === null ? days : days.filter(({ date }) => date >= from);
  let count = 0;
  const full = rest.findIndex(({ orders }) => {
    count += orders.length;
    return count >= ORDERS_SHOWN;
  });
  const shown = full < 0 ? rest : rest.slice(0, full + 1);
  return { shown, laterFrom: rest[shown.length]?.date ?? null };
};
