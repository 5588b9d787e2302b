import type { Tx } from '../../../db/open.ts';
import { orderById, type StoredOrder, updateOrder } from '../../../db/stores/order-store.ts';
import { thereIsNo } from '../../../shared/said-back.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { todayIn } from '../../engine/book/today-in.ts';
import { done, type Outcome, refuse } from '../core/context.ts';
import type { DaysTyped } from '../typed/order-form.ts';
import { orderName } from './open-order.ts';
import { dayFaults, lineFaults } from './order-draft.ts';
import { passedDays } from './passed-days.ts';
import type { OrderEdit } from './save-order.ts';

/** Whether an order ended in a way that it can be taken up from: cancelled, or its hold ran out. */
export const canBeTakenUp = ({ status }: Pick<StoredOrder, 'status'>): boolean =>
  status === 'cancelled' || status === 'lapsed';

const toTakeUp = async (tx: Tx, yard: YardFile, id: string): Promise<Outcome<StoredOrder>> => {
  const order = await orderById(tx, id);
  if (!order) return refuse('order', thereIsNo('order', id));
  if (!canBeTakenUp(order)) return refuse('order', `Order ${id} is ${order.status}. Nothing was changed.`);
  const [fault] = lineFaults(
    order.lines.map((line, row) => ({ row, line })),
    yard,
  );
  return fault ? refuse('order', `It can't be taken up as it was. ${fault.message}`) : done(order);
};

/**
 * Takes an order up again that was cancelled or lapsed: open under its own number, with its customer, lines and note, and
 * the date given now, if one is, as its first. Nothing is set aside for it; what was is stock since.
 */
export const takeUpOrder = (id: string, days: Omit<DaysTyped, 'heldUntil'>): OrderEdit<{ name: string }> => ({
  what: { kind: 'order taken up again', words: ({ name }) => `Order ${id} taken up again (${name})` },
  work: async (tx, yard) => {
    const found = await toTakeUp(tx, yard, id);
    if (!found.ok) return found;
    const { promisedOn } = days;
    const faults = dayFaults({ promisedOn, heldUntil: null }, yard);
    if (faults.length > 0) return { ok: false, faults };
    await updateOrder(tx, id, { status: 'open', promisedOn, firstPromisedOn: promisedOn, heldUntil: null });
    return done({ id, name: orderName(found.value), passed: passedDays(days, todayIn(yard)) });
  },
});
