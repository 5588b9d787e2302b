import type { StoredPlan } from '../../../db/stores/plan-store.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { lateSteps } from '../plan/late-steps.ts';
import { workOfPlan, workUnderWay } from '../plan/late-work.ts';
import { linesOf } from './late-facts.ts';
import type { SessionStep } from './session-step.ts';
import type { Shown } from './session-steps.ts';
import type { LateLine } from './today-model.ts';

/**
 * What is under way, in order of time. A step that stands in the list of the session is that very step; one that does not,
 * because its hours are no longer there, is one of its own.
 */
export const begunFacts = (
  yard: YardFile,
  stored: StoredPlan,
  steps: readonly SessionStep[],
  shown: Shown,
): LateLine[] => {
  const begun = workUnderWay(yard, workOfPlan(stored));
  if (!begun) return [];
  const listed = new Map(steps.map((step) => [step.name, step]));
  return linesOf(lateSteps(begun), yard, stored, shown).map(({ name, step }) => ({
    ...{ name, step: listed.get(name) ?? step },
  }));
};
