import type { PlanFile, PlanPour } from '../../../shared/plan.ts';
import { minuteOf } from '../../../shared/time.ts';
import { coatToCome, withoutCoat } from './carry-coat.ts';
import { type Carrying, onTime } from './carrying.ts';
import type { SetUpWork } from './work-done.ts';

const byPrep = (a: PlanPour, b: PlanPour): number => minuteOf(a.prepStart) - minuteOf(b.prepStart);

/** A mould was made ready to pour, for what the plan has next for it: its set-up is over, and a coat before it. */
export const afterSetUpDone = (
  { plan, after }: Carrying,
  { mould, casting, coated, doneAt }: SetUpWork,
): PlanFile | null => {
  const next = plan.pours.filter((pour) => pour.mould === mould).sort(byPrep)[0];
  const batch = plan.batches.find(({ id }) => id === next?.batch);
  if (!next || !batch || next.casting !== casting) return null;
  const { start, end } = batch;
  // A batch that is over by the clock was over later than that.
  if (minuteOf(doneAt) > minuteOf(start) && minuteOf(end) <= minuteOf(after.yard.now)) return null;
  const coat = coatToCome(plan, mould);
  if (!onTime(next.prepEnd, minuteOf(doneAt)) || (coat && !coated)) return null;
  const ready = { ...next, prepStart: start, prepEnd: start };
  return withoutCoat({ ...plan, pours: plan.pours.map((pour) => (pour === next ? ready : pour)) }, coat);
};
