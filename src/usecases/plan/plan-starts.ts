import { type PlanFile, spellsOf } from '../../../shared/plan.ts';
import { type Minute, minuteOf } from '../../../shared/time.ts';
import { pourMinutes } from './pour-minutes.ts';

/** Worked out once for a plan. */
const known = new WeakMap<PlanFile, Float64Array>();

const sortedStarts = (plan: PlanFile): Float64Array => {
  const { pours, coats, batches, strips, orders } = plan;
  const preps = pourMinutes(plan, 'prepStart').filter((_, at) => pours[at]!.prepStart !== pours[at]!.prepEnd);
  const starts: Minute[] = [...preps, ...pourMinutes(plan, 'stripStart')];
  for (const { start } of [...batches, ...coats]) starts.push(minuteOf(start));
  for (const { stripStart } of strips) starts.push(minuteOf(stripStart));
  for (const order of orders) for (const { packStart } of spellsOf(order)) starts.push(minuteOf(packStart));
  return Float64Array.from(starts).sort();
};

/** Whether a plan has something begin between two minutes: coating, setting up, mixing, stripping, packing. Half-open. */
export const beginsWithin = (plan: PlanFile, { start, end }: { start: Minute; end: Minute }): boolean => {
  const starts = known.get(plan) ?? sortedStarts(plan);
  known.set(plan, starts);
  let [low, high] = [0, starts.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (starts[middle]! < start) low = middle + 1;
    else high = middle;
  }
  return low < starts.length && starts[low]! < end;
};
