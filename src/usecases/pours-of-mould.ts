import type { PlanFile, PlanPour } from '../../shared/plan.ts';
import { minuteOf } from '../../shared/time.ts';

type PoursOfMoulds = ReadonlyMap<string, readonly PlanPour[]>;

/** Worked out once for a plan: pages ask for mould after mould, and a large plan has thousands of pours. */
const known = new WeakMap<PlanFile, PoursOfMoulds>();

const byMould = ({ pours }: PlanFile): PoursOfMoulds => {
  const moulds = new Map<string, PlanPour[]>();
  for (const pour of pours) {
    const own = moulds.get(pour.mould);
    if (own) own.push(pour);
    else moulds.set(pour.mould, [pour]);
  }
  for (const own of moulds.values()) own.sort((a, b) => minuteOf(a.prepStart) - minuteOf(b.prepStart));
  return moulds;
};

/** The pours that a plan has for a mould, in order of time. */
export const poursOfMould = (plan: PlanFile, mould: string): readonly PlanPour[] => {
  const moulds = known.get(plan) ?? byMould(plan);
  known.set(plan, moulds);
  return moulds.get(mould) ?? [];
};
