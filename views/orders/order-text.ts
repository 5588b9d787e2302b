import { dayText, spareText } from '../parts/day-text.ts';
import { quantityText } from '../parts/quantity-text.ts';
import type { OrderFacts } from './order-facts.ts';

/** The date an order is measured by: the one given to the customer, else the one they asked for. */
export const dueOf = ({ promisedOn, wantedOn }: Pick<OrderFacts, 'promisedOn' | 'wantedOn'>): string | null =>
  promisedOn ?? wantedOn;

export const isLate = (order: OrderFacts): boolean => {
  const due = dueOf(order);
  return order.readyOn !== null && due !== null && order.readyOn > due;
};

/** "2 × Trough 1100 x 500, one course; 3 × Panel 800" */
export const contentsText = (contents: OrderFacts['contents']): string =>
  contents.map(({ name, quantity, unit }) => `${quantityText(quantity, unit)} ${name}`).join('; ');

/** "promised Sat 8 May", "held at Sat 8 May until Thu 8 Apr", "wanted Sat 8 May", "no date given". */
export const agreedText = ({ promisedOn, wantedOn, heldUntil }: OrderFacts, today: string): string => {
  if (promisedOn && heldUntil) return `${dayText(promisedOn, today)} held until ${dayText(heldUntil, today)}`;
  if (promisedOn) return `promised ${dayText(promisedOn, today)}`;
  return wantedOn ? `wanted ${dayText(wantedOn, today)}` : 'no date given';
};

/** What comes after the customer's name: "promised Sat 8 May, 2 days to spare". */
export const standingText = (order: OrderFacts, today: string): string => {
  if (order.readyOn === null) return `can't be made yet, because ${order.reason ?? 'no time is left for it'}`;
  const due = dueOf(order);
  return due ? `${agreedText(order, today)}, ${spareText(order.readyOn, due)}` : agreedText(order, today);
};

/** What can be sent to a customer about an order: never more than today's plan. */
export const readyMessage = ({ customer, id, readyOn }: OrderFacts, today: string): string => {
  const hello = customer ? `Hello ${customer}. ` : '';
  return readyOn
    ? `${hello}By today's plan your order ${id} will be ready ${dayText(readyOn, today)}.`
    : `${hello}By today's plan we can't give a date for your order ${id} yet.`;
};
