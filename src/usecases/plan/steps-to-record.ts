import type { PlanOfWork } from '../../../shared/late-work.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { type LateStep, lateSteps } from './late-steps.ts';
import { lateWork, workUnderWay } from './late-work.ts';

/** What of the work of a plan has begun by a yard's now and is not recorded: late steps, and after them those under way. */
export const stepsToRecord = (yard: YardFile, work: PlanOfWork): LateStep[] =>
  [lateWork(yard, work), workUnderWay(yard, work)].flatMap((found) => (found ? lateSteps(found) : []));
