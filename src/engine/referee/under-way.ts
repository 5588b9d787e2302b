import type { Begun, KeptPrep, PackSpell, PlanCoat, PlanPour } from '../../../shared/plan.ts';
import { minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';

/** What has begun by now (R14): batches by id, strips, set-ups and coats by mould, packings by order. */
export interface UnderWay {
  batches: Set<string>;
  strips: Set<string>;
  preps: Map<string, KeptPrep>;
  coats: Map<string, PlanCoat>;
  packs: Map<string, Begun['packs'][number]>;
}

/** Example: a yard file without `begun` has nothing under way: `underWayOf(yard).batches.size` is 0. */
export const underWayOf = ({ begun }: YardFile): UnderWay => ({
  batches: new Set(begun?.batches.map((x) => x.id)),
  strips: new Set(begun?.strips.map((x) => x.mould)),
  preps: new Map(begun?.preps.map((x) => [x.mould, x])),
  coats: new Map(begun?.coats.map((x) => [x.mould, x])),
  packs: new Map(begun?.packs.map((x) => [x.order, x])),
});

/** True when the set-up of a pour is the one that is under way in its mould, at its very times. */
export const isPrepUnderWay = ({ preps }: UnderWay, pour: PlanPour): boolean => {
  const prep = preps.get(pour.mould);
  if (!prep || prep.casting !== pour.casting) return false;
  return minuteOf(prep.prepStart) === minuteOf(pour.prepStart) && minuteOf(prep.prepEnd) === minuteOf(pour.prepEnd);
};

/** True when a spell of packing an order is the one that is under way, at its very times. */
export const isPackUnderWay = ({ packs }: UnderWay, order: string, { packStart, packEnd }: PackSpell): boolean => {
  const pack = packs.get(order);
  return (
    pack !== undefined &&
    minuteOf(pack.packStart) === minuteOf(packStart) &&
    minuteOf(pack.packEnd) === minuteOf(packEnd)
  );
};

/** True when a coat is the one that is under way in its mould, at its very times. */
export const isCoatUnderWay = ({ coats }: UnderWay, { mould, start, end }: PlanCoat): boolean => {
  const coat = coats.get(mould);
  return coat !== undefined && minuteOf(coat.start) === minuteOf(start) && minuteOf(coat.end) === minuteOf(end);
};
