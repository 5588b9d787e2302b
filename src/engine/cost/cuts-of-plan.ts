import type { Cut, Material } from '../../../shared/material.ts';
import type { PlanFile } from '../../../shared/plan.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { usableMm } from '../book/offcuts.ts';
import { restOf } from '../cut/offcuts.ts';
import type { Bearer, Charges } from './charges.ts';
import { noPrice, type TakeGoods } from './figures.ts';
import { shareOut } from './share-out.ts';

/** So much of a stick's material went: in the pieces that were cut, and in all with kerfs and rests of no use. In sticks. */
interface SticksUsed {
  inPieces: number;
  inAll: number;
}

/** What is cut for each batch or order, by material. */
export type CutsFor = ReadonlyMap<string, ReadonlyMap<string, SticksUsed>>;

/** The length that a stick loses for good, mm: all but a rest that something can still be cut from. */
export const lostMm = (
  lengthMm: number,
  material: Material,
  cuts: readonly Pick<Cut, 'lengthMm' | 'count'>[],
  least: number,
) => {
  const rest = restOf(lengthMm, material.kerfMm, cuts);
  return rest >= least ? lengthMm - rest : lengthMm;
};

/**
 * What the sticks of a plan come to for each batch or order: the waste of a stick (kerfs, and a rest too short for anything) is
 * shared by the lengths that are cut from it. A rest that is of use is no cost: whoever cuts from it later pays for it.
 */
export const cutsOfPlan = ({ sticks }: Pick<PlanFile, 'sticks'>, yard: YardFile): CutsFor => {
  const materials = new Map(yard.materials.map((one) => [one.id, { ...one, least: usableMm(yard, one.id) }]));
  const all = new Map<string, Map<string, SticksUsed>>();
  for (const { material: id, offcutMm, cuts } of sticks) {
    const material = materials.get(id);
    if (material?.stickMm === undefined) continue;
    const mm = cuts.reduce((sum, { lengthMm, count }) => sum + lengthMm * count, 0);
    const lost = lostMm(offcutMm ?? material.stickMm, material, cuts, material.least);
    for (const { lengthMm, count, for: taker } of cuts) {
      const own = all.get(taker) ?? new Map<string, SticksUsed>();
      const before = own.get(id) ?? { inPieces: 0, inAll: 0 };
      const inPieces = (lengthMm * count) / material.stickMm;
      own.set(id, { inPieces: before.inPieces + inPieces, inAll: before.inAll + (inPieces * lost) / mm });
      all.set(taker, own);
    }
  }
  return all;
};

/** Charges what was cut of a material to those it was cut for, by length, what was lost of the sticks apart. */
export const chargeCuts = (
  charges: Charges,
  take: TakeGoods,
  { material, inPieces, inAll }: SticksUsed & { material: string },
  bearers: readonly Bearer[],
): void => {
  const { price, unpriced } = take(material, inAll);
  const [cut, lost] = shareOut(price, [inPieces, inAll - inPieces]);
  charges.share('cuts', cut!, bearers);
  charges.share('cut waste', lost!, bearers);
  if (unpriced > 0) charges.lack(noPrice(material), bearers);
};

/** The length of a material that is cut for something, mm. */
export const mmOf = (cuts: readonly Cut[], material: string): number =>
  cuts.reduce((sum, cut) => (cut.material === material ? sum + cut.lengthMm * cut.count : sum), 0);
