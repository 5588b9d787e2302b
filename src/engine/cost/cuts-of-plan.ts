import type { Cut, Material, SheetCut } from '../../../shared/material.ts';
import type { PlanFile } from '../../../shared/plan.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { usableMm } from '../book/offcuts.ts';
import { restOf } from '../cut/offcuts.ts';
import type { Bearer, Charges } from './charges.ts';
import { noPrice, type TakeGoods } from './figures.ts';
import { shareOut } from './share-out.ts';

/**
 * So much of a material that is cut went: in the pieces, and in all with kerfs and rests of no use. In sticks, or in sheets.
 */
interface CutUp {
  inPieces: number;
  inAll: number;
}

/** What is cut for each batch or order, by material. */
export type CutsFor = ReadonlyMap<string, ReadonlyMap<string, CutUp>>;

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

type ByTaker = Map<string, Map<string, CutUp>>;

const addTo = (all: ByTaker, taker: string, material: string, { inPieces, inAll }: CutUp): void => {
  const own = all.get(taker) ?? new Map<string, CutUp>();
  const before = own.get(material) ?? { inPieces: 0, inAll: 0 };
  own.set(material, { inPieces: before.inPieces + inPieces, inAll: before.inAll + inAll });
  all.set(taker, own);
};

const mm2 = ({ widthMm, lengthMm }: { widthMm: number; lengthMm: number }): number => widthMm * lengthMm;

/** Each sheet or rest is cut for one batch, which bears all of it that is not kept. */
const addSheets = (all: ByTaker, sheets: NonNullable<PlanFile['sheets']>, { materials }: YardFile): void => {
  for (const { material: id, for: taker, rest, pieces, kept } of sheets) {
    const { sheetWidthMm = 0, sheetLengthMm = 0 } = materials.find((one) => one.id === id) ?? {};
    const sheet = sheetWidthMm * sheetLengthMm;
    if (sheet === 0) continue;
    const sum = (parts: readonly { widthMm: number; lengthMm: number }[]) => parts.reduce((n, one) => n + mm2(one), 0);
    const gone = (rest ? mm2(rest) : sheet) - sum(kept);
    addTo(all, taker, id, { inPieces: sum(pieces) / sheet, inAll: gone / sheet });
  }
};

/**
 * What the sticks and sheets of a plan come to for each batch or order: the waste of a stick (kerfs, and a rest too short for anything) is
 * shared by the lengths that are cut from it. A rest that is of use is no cost: whoever cuts from it later pays for it.
 */
export const cutsOfPlan = ({ sticks, sheets = [] }: Pick<PlanFile, 'sticks' | 'sheets'>, yard: YardFile): CutsFor => {
  const materials = new Map(yard.materials.map((one) => [one.id, { ...one, least: usableMm(yard, one.id) }]));
  const all: ByTaker = new Map();
  for (const { material: id, offcutMm, cuts } of sticks) {
    const material = materials.get(id);
    if (material?.stickMm === undefined) continue;
    const mm = cuts.reduce((sum, { lengthMm, count }) => sum + lengthMm * count, 0);
    const lost = lostMm(offcutMm ?? material.stickMm, material, cuts, material.least);
    for (const { lengthMm, count, for: taker } of cuts) {
      const inPieces = (lengthMm * count) / material.stickMm;
      addTo(all, taker, id, { inPieces, inAll: (inPieces * lost) / mm });
    }
  }
  addSheets(all, sheets, yard);
  return all;
};

/** Charges what was cut of a material to those it was cut for, by length, what was lost of the sticks apart. */
export const chargeCuts = (
  charges: Charges,
  take: TakeGoods,
  { material, inPieces, inAll }: CutUp & { material: string },
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

/** The area of a material that is cut for something, mm2. */
export const mm2Of = (cuts: readonly SheetCut[], material: string): number =>
  cuts.reduce((sum, cut) => (cut.material === material ? sum + mm2(cut) * cut.count : sum), 0);
