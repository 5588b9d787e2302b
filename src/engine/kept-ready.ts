import type { PlanFile } from '../../shared/plan.ts';
import type { YardFile } from '../../shared/yard-file.ts';
import { planWithMemory } from './plan.ts';
import type { PlanMemory } from './search/memory.ts';
import { keepOfPlan } from './standing/keep-of-plan.ts';

/** So many pieces of a casting that are to stand ready in the yard, for whoever comes. */
export interface KeptReady {
  casting: string;
  count: number;
  /** The last date on which they are of use, which are not poured for a later one; left out: on any. */
  by?: string;
}

/** More than these are beyond any yard of this kind, and each is placed by itself. */
const MOST_PIECES = 200;

type OwnOrder = YardFile['orders'][number];

/** An order of the yard itself for each piece, with what it is of: of weight 0, so that it counts for nothing against anybody's. */
const ordersOf = (wanted: readonly KeptReady[], { orders, castings }: YardFile): Map<OwnOrder, KeptReady> => {
  const taken = new Set(orders.map(({ id }) => id));
  let prefix = 'kept ready';
  while ([...taken].some((id) => id.startsWith(prefix))) prefix = `+${prefix}`;
  const pieces = wanted
    .filter(({ casting }) => castings.some(({ id }) => id === casting))
    .flatMap((one) => Array<KeptReady>(one.count).fill(one))
    .slice(0, MOST_PIECES);
  return new Map(
    pieces.map((one, n) => [{ id: `${prefix} ${n}`, weight: 0, lines: [{ casting: one.casting, quantity: 1 }] }, one]),
  );
};

/** What would be there only when it is of no use any more, or is not made at all. */
const tooLate = (own: ReadonlyMap<OwnOrder, KeptReady>, { orders }: PlanFile): ReadonlySet<KeptReady> => {
  const days = new Map(orders.map(({ id, completesOn }) => [id, completesOn]));
  return new Set(
    [...own].flatMap(([{ id }, one]) => (one.by !== undefined && !((days.get(id) ?? '9') <= one.by) ? [one] : [])),
  );
};

/** Whether every order has the very day that it had. */
const sameDays = (plan: PlanFile, other: PlanFile): boolean => {
  const days = new Map(other.orders.map(({ id, completesOn }) => [id, completesOn]));
  return plan.orders.every(({ id, completesOn }) => days.get(id) === completesOn);
};

/** Orders of the yard itself are nobody's: what is poured for them is poured for stock. */
const asStock = (plan: PlanFile, own: ReadonlySet<string>): PlanFile => {
  const forNobody = <T extends { order?: string | undefined }>(entries: readonly T[]): T[] =>
    entries.map((entry) => {
      if (entry.order === undefined || !own.has(entry.order)) return entry;
      const { order: _own, ...rest } = entry;
      return rest as T;
    });
  return {
    ...plan,
    pours: forNobody(plan.pours),
    strips: forNobody(plan.strips),
    orders: plan.orders.filter(({ id }) => !own.has(id)),
    unplanned: plan.unplanned.filter(({ order }) => !own.has(order)),
  };
};

/**
 * A plan with pours for what is to stand ready, in the time and the moulds that it leaves: all of it stays as it is, and no
 * order is ready a day later. Finished pieces, and pours, that are for nobody count for what is to stand ready. Where an
 * order waits for material or time, nothing is poured for the yard itself: the plan comes back as it was. What would be there
 * only after it is of use is left out.
 *
 * `memory` is that of the plan.
 *
 * Example: `withKeptReady(yard, planYard(yard), [])` is the plan.
 */
export const withKeptReady = (
  yard: YardFile,
  plan: PlanFile,
  wanted: readonly KeptReady[],
  memory?: PlanMemory,
): PlanFile => {
  const own = ordersOf(wanted, yard);
  if (own.size === 0 || plan.unplanned.some(({ cause }) => cause !== 'mould')) return plan;
  const begun = new Set([...(yard.begun?.batches ?? []), ...(yard.begun?.pours ?? [])].map(({ id }) => id));
  const keep = keepOfPlan(plan);
  const behind = planWithMemory(
    {
      ...yard,
      keep: {
        ...keep,
        batches: keep.batches.filter(({ id }) => !begun.has(id)),
        pours: keep.pours.filter(({ id }) => !begun.has(id)),
        preps: yard.keep?.preps ?? [],
      },
      orders: [...yard.orders, ...own.keys()],
    },
    { effort: 'quick', near: plan, ...(memory ? { memory } : {}) },
  ).plan;
  if (behind.dropped.length > 0 || !sameDays(plan, behind)) return plan;
  const late = tooLate(own, behind);
  if (late.size > 0)
    return withKeptReady(
      yard,
      plan,
      wanted.filter((one) => !late.has(one)),
      memory,
    );
  const stock = asStock(behind, new Set([...own.keys()].map(({ id }) => id)));
  return { ...stock, dropped: plan.dropped, ...(plan.bound ? { bound: plan.bound } : {}) };
};
