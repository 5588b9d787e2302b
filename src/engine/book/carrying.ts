import type { PlanFile } from '../../../shared/plan.ts';
import { type Minute, minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import type { Entry } from './entry.ts';

/** A plan that is to go on, with the yard before and after the work. */
export interface Carrying {
  plan: PlanFile;
  before: YardFile;
  after: YardFile;
  entries: readonly Entry[];
}

/** Done no more than this much sooner or later than planned: what follows still holds. */
const ON_TIME_MINUTES = 15;

/** Whether work was done within a quarter of an hour of its planned instant, sooner or later. */
export const onTime = (planned: string, at: Minute): boolean => Math.abs(minuteOf(planned) - at) <= ON_TIME_MINUTES;
