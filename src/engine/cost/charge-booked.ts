import type { Casting } from '../../../shared/casting.ts';
import { type Cut, isCutUp, type Material, type SheetCut } from '../../../shared/material.ts';
import type { Mix } from '../../../shared/mix.ts';
import type { OrderLine } from '../../../shared/order.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { goodsOfLines } from '../book/goods.ts';
import type { BookedGoods } from './booked-goods.ts';
import { chargeGoods } from './charge-batch.ts';
import type { Bearer, Charges } from './charges.ts';
import { chargeCuts, mm2Of, mmOf } from './cuts-of-plan.ts';
import type { TakeGoods } from './figures.ts';

/** A piece that goods went into. */
interface PieceCharged {
  owner: string;
  casting: Casting;
}

interface ToCut {
  cuts: readonly Cut[];
  sheets?: readonly SheetCut[] | undefined;
}

/** What the pieces that are cut of a material measure, in sticks or in sheets. */
const measureOf = (
  { id, stickMm, sheetWidthMm = 0, sheetLengthMm = 0 }: Material,
  { cuts, sheets = [] }: ToCut,
): number =>
  stickMm === undefined ? mm2Of(sheets, id) / (sheetWidthMm * sheetLengthMm || Infinity) : mmOf(cuts, id) / stickMm;

/** Charges what the book has of one material to those it is for; `measured` is what the pieces measure that were cut of it. */
const charge = (
  charges: Charges,
  take: TakeGoods,
  { material, quantity }: BookedGoods,
  measured: number,
  bearers: readonly Bearer[],
): void => {
  if (isCutUp(material)) {
    const cut = { material: material.id, inPieces: Math.min(measured, quantity), inAll: quantity };
    chargeCuts(charges, take, cut, bearers);
    return;
  }
  chargeGoods(charges, take, material.id, bearers, quantity);
};

const perPieceOf = ({ perPiece }: Casting, id: string): number =>
  perPiece.reduce((sum, { material, quantity }) => (material === id ? sum + quantity : sum), 0);

/** So much of what a batch took of a material went into its pieces, and was no part of the mix. */
const besideMix = ({ material: { id }, quantity }: BookedGoods, mix: Mix, pieces: readonly PieceCharged[]): number => {
  if (!mix.perBag.some(({ material }) => material === id)) return quantity;
  return Math.min(
    quantity,
    pieces.reduce((sum, { casting }) => sum + perPieceOf(casting, id), 0),
  );
};

/** What the mix of a batch took by the book, by material; of what the book does not have, nothing. */
export const bookedMix = (
  booked: readonly BookedGoods[],
  mix: Mix,
  pieces: readonly PieceCharged[],
): ReadonlyMap<string, number> =>
  new Map(booked.map((one) => [one.material.id, one.quantity - besideMix(one, mix, pieces)]));

/**
 * Charges what went into the pieces of a batch beside its mix, by the book: each as much as its share of what the yard's figures
 * say, or equal shares of what they do not know of.
 */
export const chargeBookedPieces = (
  charges: Charges,
  take: TakeGoods,
  booked: readonly BookedGoods[],
  { mix, pieces }: { mix: Mix; pieces: readonly PieceCharged[] },
): void => {
  for (const one of booked) {
    const quantity = besideMix(one, mix, pieces);
    if (quantity <= 0) continue;
    const weights = pieces.map(({ owner, casting }) => ({
      owner,
      weight: isCutUp(one.material) ? measureOf(one.material, casting) : perPieceOf(casting, one.material.id),
    }));
    const measured = weights.reduce((sum, { weight }) => sum + weight, 0);
    charge(charges, take, { ...one, quantity }, measured, weights);
  }
};

/** Charges what was packed with the pieces of an order, by the book. */
export const chargeBookedOrder = (
  charges: Charges,
  take: TakeGoods,
  booked: readonly BookedGoods[],
  { owner, lines, yard }: { owner: string; lines: readonly OrderLine[]; yard: Pick<YardFile, 'kits'> },
): void => {
  const goods = goodsOfLines(lines, yard);
  for (const one of booked) charge(charges, take, one, measureOf(one.material, goods), [{ owner, weight: 1 }]);
};
