import type { PlanFile, PlanOrder } from '../../../shared/plan.ts';
import { type Minute, minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { calendarOf } from '../calendar/calendar.ts';
import { goodsOfOrder, linesLeft } from './goods.ts';

type Unpacked = (order: PlanOrder) => boolean;

/** By order, when the last of its pieces is ready that is not packed: minutes, not before the yard's now. */
const lastReady = (plan: PlanFile, yard: YardFile, isAsked: Unpacked): Map<string, Minute> => {
  const now = minuteOf(yard.yard.now);
  const last = new Map<string, Minute>();
  const ready = (order: string, at: Minute) => {
    const known = last.get(order);
    if (known !== undefined && at > known) last.set(order, at);
  };
  for (const order of plan.orders)
    if (isAsked(order)) {
      last.set(order.id, now);
      for (const { finished } of order.fromFinished) {
        const { readyAt } = yard.finished[finished] ?? {};
        if (readyAt !== undefined) ready(order.id, minuteOf(readyAt));
      }
    }
  for (const { order, pieceReadyAt } of [...plan.strips, ...plan.pours])
    if (order !== undefined) ready(order, minuteOf(pieceReadyAt));
  return last;
};

/**
 * A plan that goes on with what is complete without packing at the time it is (R11): when its last piece is ready, and not
 * before now. Null where that is on another date than it was, or where parts may hold it: then it has to be made anew.
 */
export const withCompletions = (plan: PlanFile, yard: YardFile): PlanFile | null => {
  const calendar = calendarOf(yard.yard.timeZone);
  const lines = new Map(yard.orders.map((order) => [order.id, linesLeft(order)]));
  const last = lastReady(plan, yard, ({ packStart }) => packStart === undefined);
  let holds = true;
  const orders = plan.orders.map((order) => {
    const [at, was] = [last.get(order.id), minuteOf(order.completesAt)];
    if (at === undefined || at === was) return order;
    const { goods, cuts } = goodsOfOrder(lines.get(order.id) ?? [], yard);
    const hasParts = goods.length + cuts.length > 0;
    if (calendar.dayOf(at) !== calendar.dayOf(was)) holds = false;
    // Parts that come later than the last piece: it completes with them, as before.
    if (hasParts && at < was) return order;
    return { ...order, completesAt: calendar.instantText(at) };
  });
  return holds ? { ...plan, orders } : null;
};
