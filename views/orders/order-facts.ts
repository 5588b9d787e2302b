import type { Slip } from '../../shared/order.ts';

/** One order as the pages speak of it. */
export interface OrderFacts {
  id: string;
  customer: string | null;
  phone: string | null;
  /** What is worth knowing about the customer, on every order of theirs. */
  customerNote: string | null;
  note: string | null;
  contents: readonly { what: string; name: string; quantity: number; unit: string }[];
  status: 'open' | 'handed over' | 'cancelled' | 'lapsed';
  wantedOn: string | null;
  promisedOn: string | null;
  heldUntil: string | null;
  handedOverOn: string | null;
  slip: Slip;
  readyOn: string | null;
  packStart: string | null;
  inYard: boolean;
  reason: string | null;
}

export const orderName = ({ customer, id }: Pick<OrderFacts, 'customer' | 'id'>): string => customer ?? `Order ${id}`;

/** Where the program keeps one order's page. */
export const orderPath = (id: string): string => `/orders/${encodeURIComponent(id)}`;
