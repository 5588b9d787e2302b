import type { StoredPlan } from '../../../db/stores/plan-store.ts';
import type { PlanOfWork } from '../../../shared/late-work.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { NO_WORK, workOfPlan } from './late-work.ts';
import { type LateWorkDone, withLateWorkDone } from './late-work-done.ts';

/**
 * The yard that a plan is made of: work whose time is over counts as done as planned, less the steps that were not done,
 * and what is under way is so. `work` is what there is to do, where it is not that of the plan that
 * stands.
 */
export const asWorked = (
  recorded: YardFile,
  stored: StoredPlan | null,
  work: PlanOfWork = stored ? workOfPlan(stored) : NO_WORK,
  notDone: readonly string[] = [],
): LateWorkDone => {
  const late = withLateWorkDone(recorded, work, new Set(notDone));
  return late ?? { yard: recorded, putBack: (plan) => ({ plan, aside: null }) };
};
