import type { Cut, Material } from '../../../shared/material.ts';
import type { PlanStick } from '../../../shared/plan.ts';
import { cutPlan } from '../cut/cut-plan.ts';
import { countedOnHand, offcutsOneByOne, restOf } from '../cut/offcuts.ts';

/** What pieces are cut from: a whole stick of a material, or with `offcutMm` an offcut of that length. */
export interface StickCut extends Pick<PlanStick, 'material' | 'offcutMm'> {
  cuts: { lengthMm: number; count: number }[];
}

/** Lengths, with how many there are of each. */
type Counts = ReadonlyMap<number, number>;

const TOLERANCE = 1e-6;
/** More than anybody keeps. */
const MOST_OFFCUTS = 1000;

const countsOf = (list: readonly { lengthMm: number; count: number }[]): Counts => {
  const counts = new Map<number, number>();
  for (const { lengthMm, count } of list) if (count > 0) counts.set(lengthMm, (counts.get(lengthMm) ?? 0) + count);
  return counts;
};

const isSame = (a: Counts, b: Counts): boolean => a.size === b.size && [...a].every(([key, n]) => b.get(key) === n);

/** The sticks of a plan that something is cut from, with no more than is cut for it; `cutFor` is a batch or an order. */
export const sticksFor = (sticks: readonly PlanStick[], cutFor: string): StickCut[] =>
  sticks.flatMap(({ material, offcutMm, cuts }) => {
    const own = cuts.filter((cut) => cut.for === cutFor).map(({ lengthMm, count }) => ({ lengthMm, count }));
    return own.length === 0 ? [] : [{ material, ...(offcutMm === undefined ? {} : { offcutMm }), cuts: own }];
  });

/** Whether sticks are in the yard, each of them once, and hold what is cut from them. */
const areThere = (material: Material, sticks: readonly StickCut[]): boolean => {
  const { stickMm = 0, kerfMm, offcuts = [] } = material;
  const whole = sticks.filter(({ offcutMm }) => offcutMm === undefined).length;
  const there = countsOf(offcuts);
  const rests = countsOf(
    sticks.flatMap(({ offcutMm }) => (offcutMm === undefined ? [] : [{ lengthMm: offcutMm, count: 1 }])),
  );
  const fit = ({ offcutMm, cuts }: StickCut): boolean => {
    const mm = cuts.reduce((sum, one) => sum + one.count * (one.lengthMm + kerfMm), -kerfMm);
    return mm <= (offcutMm ?? stickMm) + TOLERANCE;
  };
  return (
    whole <= countedOnHand(material) &&
    [...rests].every(([lengthMm, count]) => count <= (there.get(lengthMm) ?? 0)) &&
    sticks.every(fit)
  );
};

/** What fits best, on as few whole sticks as can be, be they there or not. */
const bestFit = (material: Material, wanted: Counts): StickCut[] => {
  const { id, stickMm = 0, kerfMm, offcuts = [] } = material;
  const demands = [...wanted].map(([lengthMm, count]) => ({ lengthMm, count, at: 0, for: id }));
  const rests = offcutsOneByOne(offcuts, MOST_OFFCUTS);
  return (cutPlan({ stickMm, kerfMm, offcuts: rests }, demands) ?? []).map(({ offcutMm, cuts }) => ({
    ...{ material: id, cuts: cuts.map(({ lengthMm, count }) => ({ lengthMm, count })) },
    ...(offcutMm === undefined ? {} : { offcutMm }),
  }));
};

/** What pieces came from. */
export interface SticksCut {
  sticks: StickCut[];
  /** They are those that were named. */
  asNamed: boolean;
}

/**
 * Which sticks and offcuts pieces are cut from: the ones that are named for them (by a plan), where they are in the yard
 * and just these pieces come from them; else what fits best. Of materials that are not sold as sticks nothing is cut.
 */
export const sticksCut = (
  materials: readonly Material[],
  cuts: readonly Cut[],
  named: readonly { material: string }[],
): SticksCut => {
  let asNamed = true;
  const sticks = materials.flatMap((material) => {
    const wanted = countsOf(cuts.filter((cut) => cut.material === material.id));
    const own = named.filter((one): one is StickCut => 'cuts' in one && one.material === material.id);
    if (material.stickMm === undefined || (wanted.size === 0 && own.length === 0)) return [];
    if (isSame(wanted, countsOf(own.flatMap((stick) => stick.cuts))) && areThere(material, own)) return own;
    asNamed = false;
    return bestFit(material, wanted);
  });
  return { sticks, asNamed };
};

/** What is left of a stick or an offcut once its pieces are cut from it, mm. */
export const restOfStick = ({ offcutMm, cuts }: StickCut, { stickMm = 0, kerfMm }: Material): number =>
  restOf(offcutMm ?? stickMm, kerfMm, cuts);
