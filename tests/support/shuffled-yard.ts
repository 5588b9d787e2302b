import type { YardFile } from '../../shared/yard-file.ts';
import { diceOf } from './random-yard/dice.ts';

/**
 * The yard with its lists in another order: orders, moulds, castings, mixes, materials and their lots, kits, finished pieces, pieces in
 * moulds. No yard with packings under way: those name finished pieces by place.
 */
export const shuffledYard = (yard: YardFile, seed: number): YardFile => {
  const dice = diceOf(seed + 700_000_000);
  const shuffled = <T>(list: readonly T[]): T[] => dice.some(list, list.length);
  return {
    ...yard,
    materials: shuffled(yard.materials).map((one) => (one.lots ? { ...one, lots: shuffled(one.lots) } : one)),
    incoming: shuffled(yard.incoming),
    mixes: shuffled(yard.mixes),
    castings: shuffled(yard.castings),
    moulds: shuffled(yard.moulds).map((mould) => ({ ...mould, makes: shuffled(mould.makes) })),
    kits: shuffled(yard.kits),
    finished: shuffled(yard.finished),
    inMould: shuffled(yard.inMould),
    orders: shuffled(yard.orders).map((order) => ({ ...order, lines: shuffled(order.lines) })),
  };
};
