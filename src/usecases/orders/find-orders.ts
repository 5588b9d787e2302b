import type { Weekday } from '../../../shared/time.ts';
import { weekOf } from '../typed/measures.ts';
import { hasWords } from '../typed/search-words.ts';
import type { OrderFacts } from './order-facts.ts';

/** Which open orders are looked for, by how they stand. */
export const WHICH_ORDERS = ['all', 'late', 'held', 'promised', 'wanted', 'no date', 'this week'] as const;
export type WhichOrders = (typeof WHICH_ORDERS)[number];

/** Which past ones, by how they ended. */
export const WHICH_PAST = ['all', 'handed over', 'cancelled', 'lapsed'] as const;
export type WhichPast = (typeof WHICH_PAST)[number];

export interface OrderSearch<W extends string = WhichOrders> {
  /** Words of a customer, a number, what is in it, a note. */
  find: string;
  which: W;
}

const inWords = (order: OrderFacts, find: string): boolean =>
  hasWords(find, [
    order.id,
    order.customer,
    order.phone,
    order.address,
    order.note,
    ...order.contents.map(({ name }) => name),
  ]);

interface Week {
  today: string;
  weekStart: Weekday;
}

const STANDS: Readonly<Record<WhichOrders, (order: OrderFacts, week: Week) => boolean>> = {
  all: () => true,
  late: ({ readyOn, promisedOn, wantedOn }) => {
    const due = promisedOn ?? wantedOn;
    return readyOn !== null && due !== null && readyOn > due;
  },
  held: ({ heldUntil }) => heldUntil !== null,
  promised: ({ promisedOn, heldUntil }) => promisedOn !== null && heldUntil === null,
  wanted: ({ wantedOn, promisedOn }) => wantedOn !== null && promisedOn === null,
  'no date': ({ wantedOn, promisedOn }) => wantedOn === null && promisedOn === null,
  'this week': ({ readyOn }, { today, weekStart }) =>
    readyOn !== null && weekOf(readyOn, weekStart) === weekOf(today, weekStart),
};

/** Open orders that have all the words, and stand as was asked for. */
export const foundOrders = (
  orders: readonly OrderFacts[],
  { find, which }: OrderSearch,
  week: Week,
): readonly OrderFacts[] => orders.filter((order) => STANDS[which](order, week) && inWords(order, find));

/** Past orders that have all the words, and ended as was asked for. */
export const foundPast = (
  orders: readonly OrderFacts[],
  { find, which }: OrderSearch<WhichPast>,
): readonly OrderFacts[] =>
  orders.filter((order) => (which === 'all' || order.status === which) && inWords(order, find));
