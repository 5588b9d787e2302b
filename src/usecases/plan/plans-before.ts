import type { Database } from '../../../db/open.ts';
import type { StoredPlan } from '../../../db/stores/plan-store.ts';

/** As many as a maker takes back one after another; a large plan is some megabytes. */
const PLANS_KEPT = 8;

/** The plan that stood before each of the last changes, by the change's number, the oldest first. */
const before = new WeakMap<Database, Map<number, StoredPlan>>();

/** Remembers the plan that stood before a change, for as long as the program runs. */
export const rememberPlanBefore = (database: Database, change: number, plan: StoredPlan): void => {
  const plans = before.get(database) ?? new Map<number, StoredPlan>();
  before.set(database, plans.set(change, plan));
  const [oldest] = plans.keys();
  if (plans.size > PLANS_KEPT && oldest !== undefined) plans.delete(oldest);
};

/** The plan that stood before a change; null when that was too long ago, or before the program was started again. */
export const planBefore = (database: Database, change: number): StoredPlan | null =>
  before.get(database)?.get(change) ?? null;
