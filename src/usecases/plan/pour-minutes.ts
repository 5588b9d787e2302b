import type { PlanFile, PlanPour } from '../../../shared/plan.ts';
import { type Minute, minuteOf } from '../../../shared/time.ts';

/** What of a pour begins when. */
type Beginning = 'prepStart' | 'fillStart' | 'stripStart';

type Pours = Pick<PlanFile, 'pours'>;

/** Read once for a plan: pages ask which of thousands of pours are in one session. */
const known = new WeakMap<Pours, Map<Beginning, Float64Array>>();

/** The minutes at which the pours of a plan are set up, filled or stripped, in the order of its pours. */
export const pourMinutes = (plan: Pours, beginning: Beginning): Float64Array => {
  const read = known.get(plan) ?? new Map<Beginning, Float64Array>();
  known.set(plan, read);
  const minutes = read.get(beginning) ?? Float64Array.from(plan.pours, (pour) => minuteOf(pour[beginning]));
  read.set(beginning, minutes);
  return minutes;
};

/** The pours of a plan that begin to be set up, filled or stripped between two minutes. Half-open. */
export const poursWithin = (
  plan: Pours,
  beginning: Beginning,
  { start, end }: { start: Minute; end: Minute },
): PlanPour[] => {
  const minutes = pourMinutes(plan, beginning);
  return plan.pours.filter((_, place) => minutes[place]! >= start && minutes[place]! < end);
};
