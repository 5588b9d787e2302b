import type { PlanCoat, PlanFile } from '../../../shared/plan.ts';
import { minuteOf } from '../../../shared/time.ts';
import { type Carrying, onTime } from './carrying.ts';
import type { CoatWork } from './work-done.ts';

/** The coat that a plan has for a mould before it is set up for its first pour there; undefined where it has none. */
export const coatToCome = ({ coats, pours }: PlanFile, mould: string): PlanCoat | undefined => {
  const starts = pours.flatMap((pour) => (pour.mould === mould ? [minuteOf(pour.prepStart)] : []));
  const first = Math.min(...starts);
  return coats.find((coat) => coat.mould === mould && minuteOf(coat.start) <= first);
};

/** A plan less one of its coats: it was given. */
export const withoutCoat = (plan: PlanFile, gone: PlanCoat | undefined): PlanFile =>
  gone === undefined ? plan : { ...plan, coats: plan.coats.filter((coat) => coat !== gone) };

/** A mould got the sealing coat that the plan has next for it. */
export const afterCoated = ({ plan }: Carrying, { mould, doneAt }: CoatWork): PlanFile | null => {
  const next = coatToCome(plan, mould);
  return next && onTime(next.end, minuteOf(doneAt)) ? withoutCoat(plan, next) : null;
};
