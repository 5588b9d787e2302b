import type { Order } from '../../../shared/order.ts';
import { dayNumber } from '../../../shared/time.ts';

/** The date an order is measured by on pages: the one given to the customer, or else the one he asked for. */
export const measuredBy = ({ due, wanted }: Pick<Order, 'due' | 'wanted'>): string | undefined => due ?? wanted;

/**
 * Days by which an order is ready after the date it is measured by; 0 without one. A plan counts only those after a date
 * given.
 *
 * Example: wanted on 10 April, none given, ready on the 17th: `daysAfter({ wanted: '2027-04-10' }, '2027-04-17')` is 7.
 */
export const daysAfter = (order: Pick<Order, 'due' | 'wanted'>, completesOn: string): number => {
  const by = measuredBy(order);
  return by === undefined ? 0 : Math.max(0, dayNumber(completesOn) - dayNumber(by));
};
