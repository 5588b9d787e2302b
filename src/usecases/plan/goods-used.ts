import type { Cut } from '../../../shared/material.ts';
import type { Mix } from '../../../shared/mix.ts';
import type { OrderLine } from '../../../shared/order.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { sticksTaken } from './cut-lengths.ts';
import { piecesOfOrder } from './pieces-of-order.ts';

/** So much of a material, in its own unit. */
export interface Goods {
  material: string;
  quantity: number;
}

const goodsOfCuts = (cuts: readonly Cut[], yard: YardFile): Goods[] =>
  cuts.flatMap((cut) => {
    const material = yard.materials.find(({ id }) => id === cut.material);
    return material ? [{ material: cut.material, quantity: sticksTaken(material, cut) }] : [];
  });

/** What a batch and the pieces poured from it take: bags, what goes into the pieces, and what is cut for them. */
export const goodsOfPour = (mix: Mix, bags: number, castings: readonly string[], yard: YardFile): Goods[] => [
  ...mix.perBag.map(({ material, quantity }) => ({ material, quantity: quantity * bags })),
  ...castings.flatMap((casting) => {
    const piece = yard.castings.find(({ id }) => id === casting);
    return [...(piece?.perPiece ?? []), ...goodsOfCuts(piece?.cuts ?? [], yard)];
  }),
];

/** What an order takes when it is packed, beside its pieces. */
export const goodsOfOrder = (lines: readonly OrderLine[], yard: YardFile): Goods[] => {
  const { parts, cuts } = piecesOfOrder(lines, yard);
  return [...[...parts].map(([material, quantity]) => ({ material, quantity })), ...goodsOfCuts(cuts, yard)];
};
