import type { OrderFacts } from '../../src/usecases/orders/order-facts.ts';

export type { OrderFacts };

export const orderName = ({ customer, id }: Pick<OrderFacts, 'customer' | 'id'>): string => customer ?? `Order ${id}`;

/** Where the program keeps one order's page. */
export const orderPath = (id: string): string => `/orders/${encodeURIComponent(id)}`;
