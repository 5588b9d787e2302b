import { customers } from '../../db/stores/customer-store.ts';
import { orderById } from '../../db/stores/order-store.ts';
import { slipOfWeight } from '../../shared/order.ts';
import { today, type UseCaseContext } from './context.ts';
import { currentPlan } from './make-plan.ts';
import { offersOf, whatOf } from './order-contents.ts';

/** What the form for an order offers, and, for one that is there already, how its fields stand. Null when it is not. */
export const showOrderForm = async (context: UseCaseContext, id: string | null) => {
  const { yard } = await currentPlan(context);
  const { known, order } = await context.database.read(async (tx) => ({
    known: await customers(tx),
    order: id === null ? null : await orderById(tx, id),
  }));
  if (id !== null && order?.status !== 'open') return null;
  return {
    yardName: yard.yard.name,
    today: today(yard.yard.timeZone, context.now),
    offers: offersOf(yard),
    customers: [...new Set(known.map(({ name }) => name))],
    order: order && {
      customer: order.customer?.name ?? '',
      phone: order.customer?.phone ?? '',
      note: order.note ?? '',
      wantedOn: order.wantedOn ?? '',
      promisedOn: order.promisedOn ?? '',
      heldUntil: order.heldUntil ?? '',
      slip: slipOfWeight(order.weight),
      lines: order.lines.map((line) => ({ what: whatOf(line), quantity: String(line.quantity) })),
    },
  };
};
