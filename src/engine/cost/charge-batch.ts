import type { Casting } from '../../../shared/casting.ts';
import type { Mix } from '../../../shared/mix.ts';
import type { Bearer, Charges } from './charges.ts';
import { type CostFigures, noPrice, type TakeGoods } from './figures.ts';
import { shareOut } from './share-out.ts';

/** A batch and what was filled from it. */
export interface BatchToCharge {
  mix: Mix;
  bags: number;
  pieces: readonly { owner: string; casting: Casting }[];
}

const byKg = (pieces: BatchToCharge['pieces']): Bearer[] =>
  pieces.map(({ owner, casting }) => ({ owner, weight: casting.kg }));

/** What goes into the pieces of a batch beside the mix, by material, with whose it is. */
const goodsOfPieces = (pieces: BatchToCharge['pieces']): Map<string, Bearer[]> => {
  const goods = new Map<string, Bearer[]>();
  for (const { owner, casting } of pieces)
    for (const { material, quantity } of casting.perPiece)
      if (quantity > 0) goods.set(material, [...(goods.get(material) ?? []), { owner, weight: quantity }]);
  return goods;
};

const weightOf = (bearers: readonly Bearer[]): number => bearers.reduce((sum, { weight }) => sum + weight, 0);

/** Takes a material and charges it to those it is for; as much as all of them take where nothing else is said. */
export const chargeGoods = (
  charges: Charges,
  take: TakeGoods,
  material: string,
  bearers: readonly Bearer[],
  quantity = weightOf(bearers),
): void => {
  const { price, unpriced } = take(material, quantity);
  charges.share('goods', price, bearers);
  if (unpriced > 0) charges.lack(noPrice(material), bearers);
};

/** Charges goods that several take, by material. */
export const chargeAllGoods = (
  charges: Charges,
  take: TakeGoods,
  goods: ReadonlyMap<string, readonly Bearer[]>,
): void => {
  for (const [material, bearers] of goods) chargeGoods(charges, take, material, bearers);
};

/** Charges the mix of a batch to its pieces by weight, parted into what was poured and what was thrown away (kg mixed less kg poured). */
export const chargeMix = (charges: Charges, { mix, bags, pieces }: BatchToCharge, take: TakeGoods): void => {
  const bearers = byKg(pieces);
  const poured = weightOf(bearers);
  const thrown = Math.max(0, bags * mix.yieldKgPerBag - poured);
  for (const { material, quantity } of mix.perBag) {
    const { price, unpriced } = take(material, quantity * bags);
    const [used, lost] = shareOut(price, [poured, thrown]);
    charges.share('mix', used!, bearers);
    charges.share('thrown away', lost!, bearers);
    if (unpriced > 0) charges.lack(noPrice(material), bearers);
  }
};

/** What a batch uses up without a recipe, by material: each piece bears its own, and an equal share of what the batch takes. */
const usedUpBy = ({ pieces }: BatchToCharge, usedUp: CostFigures['usedUp']): Map<string, Bearer[]> =>
  new Map(
    usedUp.map(({ material, perTurn, perBatch }) => [
      material,
      pieces.map(({ owner }) => ({ owner, weight: perTurn + perBatch / pieces.length })),
    ]),
  );

/**
 * Charges what goes into a batch to its pieces: the mix, what else goes into each piece, and what is used up. Cuts and work are charged by
 * themselves.
 */
export const chargeBatch = (
  charges: Charges,
  batch: BatchToCharge,
  take: TakeGoods,
  { usedUp }: Pick<CostFigures, 'usedUp'>,
): void => {
  chargeMix(charges, batch, take);
  chargeAllGoods(charges, take, goodsOfPieces(batch.pieces));
  chargeAllGoods(charges, take, usedUpBy(batch, usedUp));
};
