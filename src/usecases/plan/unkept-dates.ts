import { promisedDays } from '../../../db/stores/order-store.ts';
import type { PlanFile } from '../../../shared/plan.ts';
import type { Changed, DoChange } from './changing.ts';
import type { UnkeptDate } from './save-edit.ts';

/** Days given, and days by plan, of all open orders. */
interface Days {
  promised: ReadonlyMap<string, string | null>;
  ready: ReadonlyMap<string, string>;
}

const readyDays = (plan: PlanFile): Days['ready'] =>
  new Map(plan.orders.map(({ id, completesOn }) => [id, completesOn]));

/** Work that is watched: the same, and what it found and left of the dates given. */
export interface WatchedWork<T> {
  work: DoChange<T>;
  /** As they were before. */
  before(): Days;
  /** The dates given once it was done. */
  promised(): Days['promised'];
}

/** Watches the dates given while a change is done, also one that is rolled back. */
export const watchingDates = <T>(work: DoChange<T>): WatchedWork<T> => {
  let before: Days = { promised: new Map(), ready: new Map() };
  let promised: Days['promised'] = new Map();
  return {
    work: async (tx, yard, change, plan, toDo) => {
      before = { promised: await promisedDays(tx), ready: readyDays(plan) };
      const outcome = await work(tx, yard, change, plan, toDo);
      promised = await promisedDays(tx);
      return outcome;
    },
    before: () => before,
    promised: () => promised,
  };
};

/** The date given to an order, where the plan does not keep it; what was promised before and is no later now is no news. */
const unkept = (
  id: string,
  before: Days,
  { promised, ready }: Days,
): Pick<UnkeptDate, 'promisedOn' | 'readyOn'> | null => {
  const promisedOn = promised.get(id);
  if (!promisedOn) return null;
  const readyOn = ready.get(id) ?? null;
  if (readyOn !== null && readyOn <= promisedOn) return null;
  const was = before.ready.get(id) ?? null;
  const isNoWorse = was === null || (readyOn !== null && readyOn <= was);
  return before.promised.get(id) === promisedOn && isNoWorse ? null : { promisedOn, readyOn };
};

/** Dates given by a change, or to orders that it made later, which the plan after it does not keep. */
export const unkeptDates = <T>(
  { plan, yard }: Pick<Changed<T>, 'plan' | 'yard'>,
  watched: WatchedWork<T>,
): UnkeptDate[] => {
  const after = { promised: watched.promised(), ready: readyDays(plan) };
  const reasons = new Map(plan.unplanned.map(({ order, reason }) => [order, reason]));
  return yard.orders.flatMap(({ id, customer }) => {
    const date = unkept(id, watched.before(), after);
    return date ? [{ order: id, customer: customer ?? null, ...date, reason: reasons.get(id) ?? null }] : [];
  });
};
