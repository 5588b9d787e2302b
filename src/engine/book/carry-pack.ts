import { type PackSpell, type PlanFile, type PlanOrder, spellsOf, withSpells } from '../../../shared/plan.ts';
import { minuteOf } from '../../../shared/time.ts';
import { type Carrying, onTime } from './carrying.ts';
import { goodsOfOrder, linesToTake } from './goods.ts';
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

/** What is left to pack by the plan once its first spell is over; null where it was done otherwise. */
const spellsLeft = (order: PlanOrder | undefined, { minutes, doneAt }: PackWork): PackSpell[] | null => {
  const [first, ...left] = order ? spellsOf(order) : [];
  if (!first || !onTime(first.packEnd, minuteOf(doneAt))) return null;
  if (minutes === undefined) return left.length === 0 ? left : null;
  return minuteOf(first.packEnd) - minuteOf(first.packStart) === minutes ? left : null;
};

/** An order is packed, or some of it: nothing is left to do for it, or the spells that come later. */
export const afterPacked = (carrying: Carrying, work: PackWork): PlanFile | null => {
  const { order: id } = work;
  const { plan, before, after, entries } = carrying;
  const packed = plan.orders.find((order) => order.id === id);
  const left = spellsLeft(packed, work);
  const isWhole = entries.some(({ kind }) => kind === 'packed');
  if (!packed || left === null || isWhole !== (left.length === 0)) return null;
  // What was meant for it and is still to be poured or stripped would be for nobody.
  const toCome = [...plan.pours, ...plan.strips].some(({ order }) => order === id);
  const taken = goodsOfOrder(linesToTake(work, before), before);
  if (toCome || shortOf(before, taken, sticksFor(plan.sticks, id)) !== null) return null;
  const places = placesAfter(before.finished, entries);
  const orders = plan.orders.map((order) => {
    return order === packed ? { ...withSpells(packed, left), fromFinished: [] } : moved(order, places);
  });
  return areThere(orders, after.finished) ? withoutCutsFor({ ...plan, orders }, id, taken, carrying) : null;
};
