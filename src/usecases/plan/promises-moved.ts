import type { StoredPromise } from '../../../db/stores/change-store.ts';
import type { PlanFile } from '../../../shared/plan.ts';
import { dayNumber, minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { daysAfter, measuredBy } from './days-late.ts';

/**
 * What a move does to the date given, or else asked for: "promise": it is broken by more or fewer days than before, or can be kept again;
 * "spare": it is kept, with no day left to spare; "planned": nothing, only the day by plan is another one.
 */
type MoveKind = 'promise' | 'spare' | 'planned';

/** An order whose day of hand-over is another one by the new plan. Without a day it cannot be made. */
export interface PromiseMove {
  order: string;
  customer: string | null;
  from: string | null;
  to: string | null;
  daysLate: number | null;
  /** The date it is measured by was only asked for. */
  isWanted: boolean;
  /** Why it cannot be made. */
  reason: string | null;
  kind: MoveKind;
}

/** What a plan promises, order by order. */
export const promisesOf = (yard: YardFile, plan: PlanFile): StoredPromise[] => {
  const planned = new Map(plan.orders.map((order) => [order.id, order]));
  const reasons = new Map(plan.unplanned.map(({ order, reason }) => [order, reason]));
  const now = minuteOf(yard.yard.now);
  return yard.orders.map((order) => {
    const { completesOn = null, completesAt } = planned.get(order.id) ?? {};
    const isThere = completesAt !== undefined && minuteOf(completesAt) <= now;
    return {
      order: order.id,
      customer: order.customer ?? null,
      due: measuredBy(order) ?? null,
      ...(order.due === undefined && order.wanted !== undefined ? { isWanted: true as const } : {}),
      completesOn,
      ...(isThere ? { isThere: true as const } : {}),
      daysLate: completesOn === null ? null : daysAfter(order, completesOn),
      reason: reasons.get(order.id) ?? null,
    };
  });
};

const daysBetween = (from: string, to: string): number => dayNumber(to) - dayNumber(from);
const daysLate = (completesOn: string, due: string): number => Math.max(0, daysBetween(due, completesOn));

/** A date that was given a moment ago moves nothing: both plans are measured by the one given now. */
const kindOf = (from: string | null, { completesOn: to, due }: StoredPromise): MoveKind => {
  if (from === null || to === null) return 'promise';
  if (!due) return 'planned';
  if (daysLate(from, due) !== daysLate(to, due)) return 'promise';
  return from < due && to === due ? 'spare' : 'planned';
};

/** An order of which all is there waits to be handed over: the days that go by meanwhile do not move it. */
const onlyWaits = (was: StoredPromise, is: StoredPromise): boolean =>
  was.isThere === true && is.isThere === true && (is.completesOn ?? '') > (was.completesOn ?? '');

/** The orders of both whose day is another one. Orders that came or went are no moves. */
export const promisesMoved = (before: readonly StoredPromise[], after: readonly StoredPromise[]): PromiseMove[] => {
  const earlier = new Map(before.map((promise) => [promise.order, promise]));
  return after.flatMap((promise): PromiseMove[] => {
    const was = earlier.get(promise.order);
    if (!was || was.completesOn === promise.completesOn || onlyWaits(was, promise)) return [];
    const { order, customer, completesOn, daysLate: late, reason, isWanted = false } = promise;
    const kind = kindOf(was.completesOn, promise);
    return [{ order, customer, from: was.completesOn, to: completesOn, daysLate: late, isWanted, reason, kind }];
  });
};

/** Only what is worth a record: the orders of both whose day is another one. */
export const movedOnly = (before: readonly StoredPromise[], after: readonly StoredPromise[]) => {
  const moved = new Set(promisesMoved(before, after).map(({ order }) => order));
  const of = (promises: readonly StoredPromise[]) => promises.filter(({ order }) => moved.has(order));
  return { before: of(before), after: of(after) };
};

/** A move that a maker has to be told about at once. */
export const isSpoken = ({ kind }: Pick<PromiseMove, 'kind'>): boolean => kind !== 'planned';

/** What several changes did to the dates together, the first one first. */
export const effectOf = (changes: readonly { before: StoredPromise[]; after: StoredPromise[] }[]): PromiseMove[] => {
  const before = new Map<string, StoredPromise>();
  const after = new Map<string, StoredPromise>();
  for (const change of changes) {
    for (const promise of change.before) if (!before.has(promise.order)) before.set(promise.order, promise);
    for (const promise of change.after) after.set(promise.order, promise);
  }
  return promisesMoved([...before.values()], [...after.values()]);
};
