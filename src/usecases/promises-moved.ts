import type { StoredPromise } from '../../db/stores/change-store.ts';
import type { PlanFile } from '../../shared/plan.ts';
import type { YardFile } from '../../shared/yard-file.ts';

/** An order whose day of hand-over is another one by the new plan. Without a day it cannot be made. */
export interface PromiseMove {
  order: string;
  customer: string | null;
  from: string | null;
  to: string | null;
  daysLate: number | null;
  /** Why it cannot be made. */
  reason: string | null;
}

/** What a plan promises, order by order. */
export const promisesOf = (yard: YardFile, plan: PlanFile): StoredPromise[] => {
  const planned = new Map(plan.orders.map((order) => [order.id, order]));
  const reasons = new Map(plan.unplanned.map(({ order, reason }) => [order, reason]));
  return yard.orders.map(({ id, customer }) => ({
    order: id,
    customer: customer ?? null,
    completesOn: planned.get(id)?.completesOn ?? null,
    daysLate: planned.get(id)?.daysLate ?? null,
    reason: reasons.get(id) ?? null,
  }));
};

/** The orders of both whose day is another one. Orders that came or went are no moves. */
export const promisesMoved = (before: readonly StoredPromise[], after: readonly StoredPromise[]): PromiseMove[] => {
  const earlier = new Map(before.map((promise) => [promise.order, promise]));
  return after.flatMap((promise): PromiseMove[] => {
    const was = earlier.get(promise.order);
    if (!was || was.completesOn === promise.completesOn) return [];
    const { order, customer, completesOn, daysLate, reason } = promise;
    return [{ order, customer, from: was.completesOn, to: completesOn, daysLate, reason }];
  });
};
