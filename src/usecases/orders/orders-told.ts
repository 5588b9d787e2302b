import { orderById, type StoredOrder } from '../../../db/stores/order-store.ts';
import type { UseCaseContext } from '../core/context.ts';
import { type CurrentPlan, currentPlan } from '../plan/make-plan.ts';
import { whatOf } from '../typed/what-ordered.ts';
import { openOrdersOf } from './open-orders.ts';
import { type OrderFacts, type OrdersSeen, orderFacts, ordersSeen } from './order-facts.ts';

type Told = Pick<
  OrderFacts,
  'id' | 'customer' | 'note' | 'status' | 'slip' | 'wantedOn' | 'promisedOn' | 'heldUntil' | 'readyOn' | 'reason'
>;

/** An order as other programs are told of it: no phone, and amounts in the unit they are kept in. */
interface OrderTold extends Told {
  lines: { what: string; quantity: number }[];
  isPacked: boolean;
}

const toldOf = (stored: StoredOrder, seen: OrdersSeen): OrderTold => {
  const facts = orderFacts(stored, seen);
  const { id, customer, note, status, slip, wantedOn, promisedOn, heldUntil, readyOn, reason } = facts;
  return {
    ...{ id, customer, note, status, slip, wantedOn, promisedOn, heldUntil, readyOn, reason },
    lines: stored.lines.map((line) => ({ what: whatOf(line), quantity: line.quantity })),
    isPacked: facts.packed,
  };
};

const seenBy = ({ plan, yard }: CurrentPlan, now: string): OrdersSeen => ordersSeen({ plan, yard }, 'metric', now);

/** Open orders by their number, so many after one; `next` names the last of them where there are more. */
export const ordersTold = async (
  context: UseCaseContext,
  { after = '', limit }: { after?: string | undefined; limit: number },
): Promise<{ items: OrderTold[]; next: string | null }> => {
  const current = await currentPlan(context);
  const seen = seenBy(current, context.now);
  const all = [...(await openOrdersOf(context, current.cached))].sort((a, b) => (a.id < b.id ? -1 : 1));
  const rest = all.filter(({ id }) => id > after);
  const shown = rest.slice(0, limit);
  return {
    items: shown.map((order) => toldOf(order, seen)),
    next: rest.length > shown.length ? (shown.at(-1)?.id ?? null) : null,
  };
};

/** The order of a number; null when there is none. */
export const orderTold = async (context: UseCaseContext, id: string): Promise<OrderTold | null> => {
  const current = await currentPlan(context);
  const stored = await context.database.read((tx) => orderById(tx, id));
  return stored && toldOf(stored, seenBy(current, context.now));
};
