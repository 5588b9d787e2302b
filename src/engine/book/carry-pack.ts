import type { PlanFile, PlanOrder } from '../../../shared/plan.ts';
import { minuteOf } from '../../../shared/time.ts';
import { type Carrying, onTime } from './carrying.ts';
import { goodsOfOrder } from './goods.ts';
import { type Places, placesAfter } from './lots.ts';
import { sticksFor } from './sticks-cut.ts';
import { withoutCutsFor } from './sticks-left.ts';
import { shortOf } from './stock-taken.ts';
import type { PackWork } from './work-done.ts';

/** What an order gets from the yard, at the places where that stands after the packing. */
const moved = (order: PlanOrder, places: Places): PlanOrder => ({
  ...order,
  fromFinished: order.fromFinished.map(({ finished, count }) => ({ finished: places.get(finished) ?? -1, count })),
});

/** Pieces planned for other orders are there still. */
const areThere = (orders: readonly PlanOrder[], finished: readonly { count: number }[]): boolean => {
  const taken = new Map<number, number>();
  for (const order of orders)
    for (const { finished: place, count } of order.fromFinished) taken.set(place, (taken.get(place) ?? 0) + count);
  return [...taken].every(([place, count]) => count <= (finished[place]?.count ?? 0));
};

/** An order is packed: nothing is left to do for it. */
export const afterPacked = (carrying: Carrying, { order: id, lines, doneAt }: PackWork): PlanFile | null => {
  const { plan, before, after, entries } = carrying;
  const packed = plan.orders.find((order) => order.id === id);
  if (packed?.packEnd === undefined || !onTime(packed.packEnd, minuteOf(doneAt))) return null;
  // What was meant for it and is still to be poured or stripped would be for nobody.
  const toCome = [...plan.pours, ...plan.strips].some(({ order }) => order === id);
  const taken = goodsOfOrder(lines, before);
  if (toCome || shortOf(before, taken, sticksFor(plan.sticks, id)) !== null) return null;
  const places = placesAfter(before.finished, entries);
  const orders = plan.orders.map((order) => {
    if (order !== packed) return moved(order, places);
    const { packStart: _start, packEnd: _end, ...rest } = packed;
    return { ...rest, fromFinished: [] };
  });
  return areThere(orders, after.finished) ? withoutCutsFor({ ...plan, orders }, id, taken, carrying) : null;
};
