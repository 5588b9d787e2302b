import type { PlanFile } from '../../../shared/plan.ts';
import { minuteOf } from '../../../shared/time.ts';
import { type Carrying, onTime } from './carrying.ts';
import { isOut } from './mould-state.ts';
import type { StripWork } from './work-done.ts';

/** A good piece is out of its mould: the order it is for gets it from the yard, where it is the last entry. */
export const afterStripped = (
  { plan, before, after }: Carrying,
  { mould, cameOut, doneAt }: StripWork,
): PlanFile | null => {
  const strip = plan.strips.find((one) => one.mould === mould);
  if (cameOut !== 'good' || !strip || !onTime(strip.stripEnd, minuteOf(doneAt))) return null;
  // A damaged one comes back clean from its mending: the plan had to clean it before its next pour.
  const isDamaged = before.moulds.some((one) => one.id === mould && isOut(one));
  if (isDamaged && plan.pours.some((pour) => pour.mould === mould)) return null;
  const piece = { finished: after.finished.length - 1, count: 1 };
  return {
    ...plan,
    strips: plan.strips.filter((one) => one !== strip),
    orders: plan.orders.map((order) =>
      order.id === strip.order ? { ...order, fromFinished: [...order.fromFinished, piece] } : order,
    ),
  };
};
