import type { Database } from '../../../db/open.ts';
import { planHead, storedPlan } from '../../../db/stores/plan-store.ts';
import type { PlanFile } from '../../../shared/plan.ts';

/** The stored plan as it stands after an act: read again only where another one was stored since. */
export interface Standing {
  number: number;
  plan: PlanFile;
  /** The hand-over day of each open order; null for one that the plan leaves out. */
  days: ReadonlyMap<string, string | null>;
}

const daysOf = (plan: PlanFile): Map<string, string | null> =>
  new Map<string, string | null>([
    ...plan.unplanned.map(({ order }): [string, null] => [order, null]),
    ...plan.orders.map(({ id, completesOn }): [string, string] => [id, completesOn]),
  ]);

export const standingNow = (database: Database, before: Standing | null): Promise<Standing | null> =>
  database.read(async (tx) => {
    const head = await planHead(tx);
    if (before && head?.number === before.number) return before;
    const stored = await storedPlan(tx);
    return stored && { number: stored.number, plan: stored.plan, days: daysOf(stored.plan) };
  });

/** An order whose planned day is another one than before. */
export interface Move {
  id: string;
  from: string | null;
  to: string | null;
}

/** Orders that are complete by a minute: they only wait for their customers, and a plan has them complete "now". */
export const completeBy = ({ plan }: Standing, minute: number): Set<string> =>
  new Set(plan.orders.filter(({ completesAt }) => Date.parse(completesAt) / 60_000 <= minute).map(({ id }) => id));

/** Whose planned day is another one, of the orders that are not complete by a minute. */
export const movesBetween = (before: Standing | null, after: Standing | null, minute: number): Move[] => {
  if (!before) return [];
  const complete = completeBy(before, minute);
  return [...before.days].flatMap(([id, from]): Move[] => {
    const to = after?.days.get(id);
    return to === undefined || to === from || complete.has(id) ? [] : [{ id, from, to }];
  });
};

/** What is poured when, told apart from the same pour at another time. */
export const poursBetween = ({ plan }: Standing, from: number, to: number): Set<string> => {
  const isWithin = ({ fillStart }: { fillStart: string }): boolean => {
    const minute = Date.parse(fillStart) / 60_000;
    return minute >= from && minute < to;
  };
  return new Set(
    plan.pours.filter(isWithin).map(({ mould, casting, fillStart }) => `${fillStart} ${mould} ${casting}`),
  );
};
