import { daysText } from '../../shared/days-text.ts';
import type { Slip } from '../../shared/order.ts';
import { dayNumber } from '../../shared/time.ts';
import type { OrderFacts } from '../orders/order-facts.ts';
import { dayText, spareText } from '../parts/day-text.ts';
import { quantityText } from '../parts/quantity-text.ts';

/** The date an order is measured by: the one given to the customer, else the one they asked for. */
export const dueOf = ({ promisedOn, wantedOn }: Pick<OrderFacts, 'promisedOn' | 'wantedOn'>): string | null =>
  promisedOn ?? wantedOn;

export const isLate = (order: OrderFacts): boolean => {
  const due = dueOf(order);
  return order.readyOn !== null && due !== null && order.readyOn > due;
};

/** Whether there is nothing left to do for it but to hand it over, which was to be done by now. */
export const isNotFetched = (order: OrderFacts): boolean => order.inYard && isLate(order);

/** "packed Sat 15 May, 7 days late": of an order that was packed after the date it was meant for; null for any other. */
export const packedLateText = (order: OrderFacts, today: string): string | null => {
  const due = dueOf(order);
  const { packedOn } = order;
  return packedOn !== null && due !== null && packedOn > due
    ? `packed ${dayText(packedOn, today)}, ${spareText(packedOn, due)}`
    : null;
};

/** Whether all that it is made of has left the stock: it is packed, all of it or some. */
export const isPackedAtAll = ({ packed, packedMinutes }: Pick<OrderFacts, 'packed' | 'packedMinutes'>): boolean =>
  packed || packedMinutes !== null;

/** "It is packed.", "180 of 300 minutes of its packing are done." */
export const packedText = ({ packedMinutes, packings }: Pick<OrderFacts, 'packedMinutes' | 'packings'>): string =>
  packedMinutes === null
    ? 'It is packed.'
    : `${packedMinutes} of ${minutesInAll({ packedMinutes, packings })} minutes of its packing are done.`;

const minutesInAll = ({ packedMinutes, packings }: Pick<OrderFacts, 'packedMinutes' | 'packings'>): number =>
  packings.reduce((sum, { minutes }) => sum + minutes, packedMinutes ?? 0);

/** "pack", "pack, 180 of 300 minutes of it": one of the times at which an order is packed. */
export const packingText = (
  { minutes }: OrderFacts['packings'][number],
  order: Pick<OrderFacts, 'packedMinutes' | 'packings'>,
): string => {
  const inAll = minutesInAll(order);
  return minutes === inAll ? 'pack' : `pack, ${minutes} of ${inAll} minutes of it`;
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

/** What comes after the customer's name: "promised Sat 8 May, 2 days to spare", "promised Sat 3 Apr, ready and not handed over". */
export const standingText = (order: OrderFacts, today: string): string => {
  if (order.readyOn === null) return `can't be made yet, because ${order.reason ?? 'no time is left for it'}`;
  const due = dueOf(order);
  if (isNotFetched(order)) {
    const late = packedLateText(order, today);
    return `${agreedText(order, today)}, ${late ? `${late},` : 'ready'} and not handed over`;
  }
  return due ? `${agreedText(order, today)}, ${spareText(order.readyOn, due)}` : agreedText(order, today);
};

const daysAfter = (readyOn: string, given: string): string =>
  `${daysText(dayNumber(readyOn) - dayNumber(given))} after`;

/** Of a date that is held: which one, of what, until when, and what today's plan makes of it. */
const heldMessage = (order: OrderFacts & { promisedOn: string; heldUntil: string }, today: string): string => {
  const { id, promisedOn, heldUntil, readyOn, contents } = order;
  const [held, until] = [dayText(promisedOn, today), dayText(heldUntil, today)];
  const hold = `We hold ${held} for your order ${id} (${contentsText(contents)}) until the end of ${until}. After that the date is free again.`;
  if (readyOn === null) return `${hold} By today's plan we can't give a date for it yet.`;
  return readyOn > promisedOn
    ? `${hold} By today's plan it will be ready ${dayText(readyOn, today)} only, ${daysAfter(readyOn, promisedOn)} the date we hold.`
    : `${hold} By today's plan it will be ready by then.`;
};

/**
 * What can be sent to a customer about an order: never more than today's plan, and a late one is told so. Who was promised a
 * day reads that day, and none that the plan has for now and may take back.
 */
export const readyMessage = (order: OrderFacts, today: string): string => {
  const { customer, id, readyOn, promisedOn, heldUntil, inYard } = order;
  const hello = customer ? `Hello ${customer}. ` : '';
  if (promisedOn && heldUntil) return hello + heldMessage({ ...order, promisedOn, heldUntil }, today);
  if (readyOn === null) return `${hello}By today's plan we can't give a date for your order ${id} yet.`;
  if (inYard)
    return `${hello}Your order ${id} is ready. By today's plan it can be handed over ${dayText(readyOn, today)}.`;
  const plan = `${hello}By today's plan your order ${id} will be ready`;
  if (promisedOn && readyOn <= promisedOn) return `${plan} by ${dayText(promisedOn, today)}, the day we said.`;
  const ready = `${plan} ${dayText(readyOn, today)}`;
  return promisedOn && readyOn > promisedOn
    ? `${ready}. That is ${daysAfter(readyOn, promisedOn)} ${dayText(promisedOn, today)}, the day we had said.`
    : `${ready}.`;
};

/** Whether an order could be later, as a maker answers it. */
export const SLIP_WORDS: Readonly<Record<Slip, string>> = { not: 'no', 'rather not': 'preferably not', yes: 'yes' };
