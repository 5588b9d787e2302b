import type { PlanBatch, PlanPour } from '../../../shared/plan.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { type Goods, goodsOfOrder, goodsOfPour } from '../plan/goods-used.ts';

/** Takes what is needed from the stock as the book has it, and names the first material there is too little of. */
export interface StockToTake {
  forBatch(batch: PlanBatch, pours: readonly PlanPour[]): string | null;
  forOrder(order: string): string | null;
}

/** Amounts add up to fractions. */
const TOLERANCE = 1e-6;

/** The stock of a yard, to be taken from step by step. */
export const stockToTake = (yard: YardFile): StockToTake => {
  const onHand = new Map(yard.materials.map((material) => [material.id, material.onHand]));
  const take = (goods: readonly Goods[]): string | null => {
    for (const { material, quantity } of goods) onHand.set(material, (onHand.get(material) ?? 0) - quantity);
    const short = yard.materials.find(({ id }) => (onHand.get(id) ?? 0) < -TOLERANCE);
    return short?.name ?? null;
  };
  return {
    forBatch: ({ mix: id, bags }, pours) => {
      const mix = yard.mixes.find((one) => one.id === id);
      const castings = pours.map(({ casting }) => casting);
      return mix ? take(goodsOfPour(mix, bags, castings, yard)) : null;
    },
    forOrder: (id) => take(goodsOfOrder(yard.orders.find((order) => order.id === id)?.lines ?? [], yard)),
  };
};
