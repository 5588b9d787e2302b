import type { PlanFile, PlanPour } from '../../../shared/plan.ts';
import { minuteOf } from '../../../shared/time.ts';
import { pourMinutes } from './pour-minutes.ts';

type PoursOfMoulds = ReadonlyMap<string, readonly PlanPour[]>;

/** Worked out once for a plan: pages ask for mould after mould, and a large plan has thousands of pours. */
const known = new WeakMap<PlanFile, PoursOfMoulds>();

const byMould = (plan: PlanFile): PoursOfMoulds => {
  const minutes = pourMinutes(plan, 'prepStart');
  const places = new Map<string, number[]>();
  plan.pours.forEach(({ mould }, place) => {
    const own = places.get(mould);
    if (own) own.push(place);
    else places.set(mould, [place]);
  });
  const inTime = (own: number[]) => own.sort((a, b) => minutes[a]! - minutes[b]!).map((place) => plan.pours[place]!);
  return new Map([...places].map(([mould, own]) => [mould, inTime(own)]));
};

/** The pours that a plan has for a mould, in order of time. */
export const poursOfMould = (plan: PlanFile, mould: string): readonly PlanPour[] => {
  const moulds = known.get(plan) ?? byMould(plan);
  known.set(plan, moulds);
  return moulds.get(mould) ?? [];
};

/** Those that begin before one of them, in order of time. */
export const poursBefore = (
  plan: PlanFile,
  { mould, prepStart }: Pick<PlanPour, 'mould' | 'prepStart'>,
): readonly PlanPour[] => {
  const own = poursOfMould(plan, mould);
  const begins = minuteOf(prepStart);
  const place = own.findIndex((one) => minuteOf(one.prepStart) >= begins);
  return place < 0 ? own : own.slice(0, place);
};
